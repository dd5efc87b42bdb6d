/** JSON pointers (RFC 6901): written from a path, and followed into a document. */
export function pointerOf(path: readonly PropertyKey[]): string {
  return path.map((part) => `/${String(part).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');
}

/** What is at `pointer` in `document`; undefined where nothing does. */
export function valueAt(document: unknown, pointer: string): unknown {
  let here = document;
  for (const raw of pointer.split('/').slice(1)) {
    const key = raw.replaceAll('~1', '/').replaceAll('~0', '~');
    if (typeof here !== 'object' || here === null || !Object.hasOwn(here, key)) return undefined;
    here = Object.getOwnPropertyDescriptor(here, key)?.value;
  }
  return here;
}
