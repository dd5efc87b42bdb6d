/** Markup of a drawing, with every text escaped here and every number finite. */
type Attributes = Readonly<Record<string, string | number | undefined>>;

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

const escaped = (text: string): string => text.replace(/[&<>"']/g, (mark) => ESCAPES[mark] ?? mark);

/** A coordinate with two decimals: finer than any screen shows. */
export function at(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError('a drawing needs finite numbers');
  return String(Math.round(value * 100) / 100);
}

function written(attributes: Attributes): string {
  return Object.entries(attributes)
    .filter((pair): pair is [string, string | number] => pair[1] !== undefined)
    .map(([name, value]) => ` ${name}="${typeof value === 'number' ? at(value) : escaped(value)}"`)
    .join('');
}

/** An element that holds markup made here. */
export function element(name: string, attributes: Attributes, inside = ''): string {
  return inside === ''
    ? `<${name}${written(attributes)}/>`
    : `<${name}${written(attributes)}>${inside}</${name}>`;
}

export const path = (className: string, d: string, more: Attributes = {}): string =>
  element('path', { class: className, d, ...more });

export const circle = (className: string, cx: number, cy: number, r: number): string =>
  element('circle', { class: className, cx, cy, r });

export const line = (className: string, x1: number, y1: number, x2: number, y2: number): string =>
  path(className, `M${at(x1)} ${at(y1)}L${at(x2)} ${at(y2)}`);

export type Anchor = 'start' | 'middle' | 'end';

export function label(
  x: number,
  y: number,
  text: string,
  options: { readonly anchor?: Anchor; readonly soft?: boolean; readonly className?: string } = {},
): string {
  const extra = options.className === undefined ? '' : ` ${options.className}`;
  const className = `draw-text${options.soft ? ' draw-text-soft' : ''}${extra}`;
  return element('text', { class: className, x, y, 'text-anchor': options.anchor }, escaped(text));
}
