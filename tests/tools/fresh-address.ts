let last = 0;

/** An address of 192.0.2.0/24, which nobody has (RFC 5737), and which no attempt was made from yet. */
export function freshAddress(): string {
  last += 1;
  return `192.0.2.${last}`;
}
