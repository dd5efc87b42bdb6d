import type { Asset } from './asset.ts';
import { GROUND } from './mark.ts';

/** By this a phone offers to put the builder's page on its screen (W3C, Web Application Manifest). */
export function manifestText(mark: Asset, screen: readonly Asset[]): string {
  return JSON.stringify({
    id: '/bench',
    name: 'Benchcall, your build',
    short_name: 'Benchcall',
    description: 'The build that the desk shares with you: enter readings at the engine.',
    lang: 'en',
    dir: 'ltr',
    start_url: '/bench',
    scope: '/bench',
    display: 'standalone',
    background_color: GROUND,
    theme_color: GROUND,
    icons: [
      { src: mark.href, sizes: 'any', type: mark.type, purpose: 'any' },
      ...screen.flatMap((icon) => {
        const size = /-(\d+)\./.exec(icon.href)?.[1] ?? '';
        const drawn = { src: icon.href, sizes: `${size}x${size}`, type: icon.type };
        return [
          { ...drawn, purpose: 'any' },
          { ...drawn, purpose: 'maskable' },
        ];
      }),
    ],
  });
}
