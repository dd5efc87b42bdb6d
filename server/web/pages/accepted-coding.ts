/** The codings that an Accept-Encoding header takes (RFC 9110, section 12.5.3); one with q=0 is refused. */
export function acceptsCoding(header: string | undefined, coding: string): boolean {
  const weights = new Map(
    (header ?? '').split(',').map((each): [string, number] => {
      const [name = '', ...params] = each.split(';').map((part) => part.trim().toLowerCase());
      const weight = params.find((param) => param.startsWith('q='));
      return [name, weight === undefined ? 1 : Number(weight.slice(2))];
    }),
  );
  return (weights.get(coding) ?? weights.get('*') ?? 0) > 0;
}
