import { readFile } from 'node:fs/promises';

const read = (name: string) => readFile(new URL(`../../views/styles/${name}`, import.meta.url), 'utf8');

function declarations(css: string): Map<string, string> {
  const pairs = css.matchAll(/(--[\w-]+):\s*([^;]+);/g);
  return new Map(Array.from(pairs, ([, name = '', value = '']) => [name, value.trim()]));
}

/** Each meaning with its colour as hex, once as designed for light and once as designed for dark. */
export async function readPalette(): Promise<Record<'light' | 'dark', Map<string, string>>> {
  const raw = declarations(await read('values.css'));
  const [lightText = '', darkText = ''] = (await read('meanings.css')).split('@media');
  const resolve = (meanings: Map<string, string>) => {
    const colours = new Map<string, string>();
    for (const [name, value] of meanings) {
      const hex = raw.get(value.match(/var\((--raw-[\w-]+)\)/)?.[1] ?? '');
      if (hex?.startsWith('#')) colours.set(name, hex);
    }
    return colours;
  };
  const light = resolve(declarations(lightText));
  return { light, dark: new Map([...light, ...resolve(declarations(darkText))]) };
}
