type Missing<T> = { [K in keyof T]: undefined extends T[K] ? K : never }[keyof T];

/** `T` with every key that may be undefined left out instead. */
type Defined<T> = { readonly [K in Exclude<keyof T, Missing<T>>]: T[K] } & {
  readonly [K in Missing<T>]?: Exclude<T[K], undefined>;
};

/** The object without its undefined parts, for types that tell a part left out from one that is undefined. */
export function defined<T extends object>(parts: T): Defined<T>;
export function defined(parts: object): object {
  return Object.fromEntries(Object.entries(parts).filter(([, part]) => part !== undefined));
}
