/** A cookie as an answer sets it (RFC 6265, section 4.1.1). */
export interface SetCookie {
  readonly name: string;
  readonly value: string;
  readonly path?: string;
  readonly httpOnly?: boolean;
  readonly secure?: boolean;
  readonly sameSite?: string;
}

function read(line: string): SetCookie {
  const [pair = '', ...attributes] = line.split(';').map((part) => part.trim());
  const equals = pair.indexOf('=');
  const given = new Map(
    attributes.map((attribute) => {
      const [name = '', ...value] = attribute.split('=');
      return [name.toLowerCase(), value.join('=')] as const;
    }),
  );
  const path = given.get('path');
  const sameSite = given.get('samesite');
  return {
    name: pair.slice(0, equals),
    value: decodeURIComponent(pair.slice(equals + 1)),
    ...(path === undefined ? {} : { path }),
    ...(sameSite === undefined ? {} : { sameSite }),
    httpOnly: given.has('httponly'),
    secure: given.has('secure'),
  };
}

/** The cookies of a `Set-Cookie` header, which comes once for each. */
export function setCookieIn(header: unknown): SetCookie[] {
  return Array.isArray(header) ? header.map((line) => read(String(line))) : [];
}
