/** A shell takes a text between single quotes as it stands; a quote inside ends it, is written, and starts it again. */
const quoted = (text: string): string => `'${text.replaceAll("'", `'\\''`)}'`;

/** Short lists and objects on one line, longer ones over several. */
function jsonText(value: unknown, indent = ''): string {
  const flat = JSON.stringify(value) ?? 'null';
  if (typeof value !== 'object' || value === null || indent.length + flat.length <= 64) {
    return flat
      .replaceAll(
        /("(?:[^"\\]|\\.)*")|([,:{}])/g,
        (_, text: string | undefined, mark: string) =>
          text ?? { ',': ', ', ':': ': ', '{': '{ ', '}': ' }' }[mark] ?? mark,
      )
      .replaceAll('{  }', '{}');
  }
  const deeper = `${indent}  `;
  if (Array.isArray(value)) {
    return `[\n${value.map((each) => deeper + jsonText(each, deeper)).join(',\n')}\n${indent}]`;
  }
  const parts = Object.entries(value).map(
    ([key, part]) => `${deeper}${JSON.stringify(key)}: ${jsonText(part, deeper)}`,
  );
  return `{\n${parts.join(',\n')}\n${indent}}`;
}

export const jsonShown = (value: unknown): string => jsonText(value);

/** The call that a shop's own system makes for the same answer. */
export function jsonCall(origin: string, name: string, body: unknown, units: string): string {
  const query = units === 'inch' ? '' : `?units=${units}`;
  return [
    `curl ${quoted(`${origin}/api/v1/compute/${name}${query}`)} \\`,
    `  -H 'content-type: application/json' \\`,
    `  -d ${quoted(jsonText(body))}`,
  ].join('\n');
}
