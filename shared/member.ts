/** Something with members that nobody knows the type of: a body, an error, what was kept as JSON. */
export const isObject = (value: unknown): value is Readonly<Record<PropertyKey, unknown>> =>
  typeof value === 'object' && value !== null;

/** Its member of that name; undefined where it has none, and of what is no object. */
export const memberOf = (value: unknown, name: PropertyKey): unknown =>
  isObject(value) ? value[name] : undefined;
