/** A length as the trade writes it: .482, -.012, 1.250; three decimals. */
export function inches(value: number): string {
  const text = Math.abs(value).toFixed(3).replace(/^0\./, '.');
  return value < 0 && !/^\.0+$/.test(text) ? `-${text}` : text;
}

/** A name as it is stamped: 1.6, 1.65. */
export function nameText(ratio: number): string {
  return String(Number(ratio.toFixed(4)));
}

/** A ratio as measured: 1.655. */
export function ratioText(ratio: number): string {
  return ratio.toFixed(3);
}

/** A chance said by fives, never more than 95 %. */
export function chanceText(chance: number): string {
  const fives = Math.min(95, Math.round(chance * 20) * 5);
  return fives < 5 ? 'under 5 %' : `about ${fives} %`;
}

/** How far a ratio stands from a name: "running 3 % over"; nothing within one per cent. */
export function awayText(ratio: number, name: number): string {
  const share = Math.round((ratio / name - 1) * 100);
  if (Math.abs(share) <= 1) return '';
  return ` running ${Math.abs(share)} % ${share > 0 ? 'over' : 'under'}`;
}

/** Several things as one says them: "a, b or c". */
export function orList(items: readonly string[]): string {
  if (items.length <= 2) return items.join(', or ');
  return `${items.slice(0, -1).join(', ')}, or ${items[items.length - 1] ?? ''}`;
}
