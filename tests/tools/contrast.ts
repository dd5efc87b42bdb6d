/**
 * Contrast of two colours, from the definitions of relative luminance and contrast ratio in
 * W3C, Web Content Accessibility Guidelines 2.2, section 6 (glossary).
 */
function luminance(hex: string): number {
  const full = hex.length === 4 ? hex.replace(/[0-9a-f]/gi, '$&$&') : hex;
  const parts = [1, 3, 5].map((at) => Number.parseInt(full.slice(at, at + 2), 16) / 255);
  const [red = 0, green = 0, blue = 0] = parts.map((part) =>
    part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4,
  );
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

export function contrast(one: string, other: string): number {
  const [darker = 0, lighter = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (lighter + 0.05) / (darker + 0.05);
}
