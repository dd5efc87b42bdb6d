import { expect, it } from 'vitest';
import { qrCode } from '../../server/call-pages/qr-code.ts';

it('the code of a link has the finder patterns and the quiet zone that ISO/IEC 18004 gives it', () => {
  const { viewBox, dark } = qrCode('https://bench.invalid/b/abc');
  const side = Number(viewBox.split(' ')[2]);
  // ISO/IEC 18004: a symbol of version v has 17 + 4 v modules a side, and 4 light ones around it.
  expect((side - 8 - 17) % 4).toBe(0);
  const squares = new Set(Array.from(dark.matchAll(/M(\d+) (\d+)/g), ([, x, y]) => `${x} ${y}`));
  // The 7 modules of the top row of a finder pattern are dark, the ring inside it is light.
  for (let x = 4; x < 11; x += 1) expect(squares.has(`${x} 4`)).toBe(true);
  for (let x = 5; x < 10; x += 1) expect(squares.has(`${x} 5`)).toBe(false);
  for (const place of squares) {
    for (const at of place.split(' ').map(Number)) {
      expect(at).toBeGreaterThanOrEqual(4);
      expect(at).toBeLessThan(side - 4);
    }
  }
});
