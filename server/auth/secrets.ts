import { createHash, randomBytes } from 'node:crypto';

/** What a secret opens can be told from its first letters; that helps scanners of leaked text, not attackers. */
export const SECRET_KINDS = {
  session: 'bcs',
  link: 'bcl',
  builder: 'bcb',
  key: 'bck',
  first: 'bcf',
  device: 'bcd',
  password: 'bcp',
} as const;
export type SecretKind = keyof typeof SECRET_KINDS;

/** A fresh secret of 256 random bits. Only its hash is ever stored. */
export function newSecret(kind: SecretKind): { secret: string; hash: string } {
  const secret = `${SECRET_KINDS[kind]}_${randomBytes(32).toString('base64url')}`;
  return { secret, hash: hashOf(secret) };
}

/** SHA-256 is enough for a secret of 256 random bits; a password needs argon2. */
export function hashOf(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

const SHAPE = /^(bc[a-z])_[A-Za-z0-9_-]{43}$/;

/** Which kind a text is a secret of, by its shape alone. */
export function kindOfSecret(text: string): SecretKind | undefined {
  const prefix = SHAPE.exec(text)?.[1];
  if (prefix === undefined) return undefined;
  const kinds: readonly SecretKind[] = ['session', 'link', 'builder', 'key', 'first', 'device', 'password'];
  return kinds.find((kind) => SECRET_KINDS[kind] === prefix);
}

/** E-mail addresses are looked up by this, so that a look-up names no address. */
export function emailKey(email: string): string {
  return hashOf(email.trim().toLowerCase());
}

const ID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;

/** Whether a text can be an id; one that can't leads nowhere and must not reach the database. */
export function isId(text: string): boolean {
  return ID.test(text);
}
