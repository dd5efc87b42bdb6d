export const LABELS = {
  email: 'E-mail address',
  password: 'Password',
  shop: 'Name of the shop',
  name: 'Your name',
};

/** What was typed, without the password: that is never sent back. */
export function withoutPassword(fields: Readonly<Record<string, string>>): Readonly<Record<string, string>> {
  const { password: _, ...rest } = fields;
  return rest;
}
