/**
 * Faults in a piece of HTML that a browser would silently repair: tags that do not close, blocks inside
 * paragraphs, attributes or ids given twice, references to ids that are not there, and what the content
 * policy forbids (inline styles and handlers).
 */
const VOID = new Set(['area', 'base', 'br', 'col', 'hr', 'img', 'input', 'link', 'meta', 'wbr']);
const PHRASING_ONLY = new Set(['p', 'h1', 'h2', 'h3', 'button', 'label', 'dt', 'summary']);
const BLOCK = new Set([
  'p',
  'div',
  'ul',
  'ol',
  'dl',
  'table',
  'section',
  'article',
  'h1',
  'h2',
  'h3',
  'form',
  'fieldset',
  'figure',
]);
const REFERENCES = ['for', 'aria-describedby', 'aria-labelledby', 'form'];

const TAG = /<(\/?)([a-zA-Z][\w-]*)((?:\s+[^\s=>"']+(?:="[^"]*")?)*)\s*(\/?)>/g;
const ATTRIBUTE = /([^\s=>"']+)(?:="([^"]*)")?/g;

interface Reading {
  readonly faults: string[];
  readonly open: string[];
  readonly ids: Map<string, number>;
  readonly references: string[];
}

function readAttributes(tag: string, text: string, reading: Reading): void {
  const names = new Set<string>();
  for (const [, name = '', value = ''] of text.matchAll(ATTRIBUTE)) {
    if (names.has(name)) reading.faults.push(`<${tag}> has ${name} twice`);
    names.add(name);
    if (name === 'style') reading.faults.push(`<${tag}> has an inline style`);
    if (/^on/i.test(name)) reading.faults.push(`<${tag}> has the inline handler ${name}`);
    if (name === 'id') reading.ids.set(value, (reading.ids.get(value) ?? 0) + 1);
    if (REFERENCES.includes(name)) reading.references.push(...value.split(/\s+/));
  }
}

function readTag(closing: boolean, tag: string, selfClosed: boolean, reading: Reading): void {
  const { open, faults } = reading;
  if (closing) {
    const last = open.pop();
    if (last !== tag) faults.push(`</${tag}> closes <${last ?? 'nothing'}>`);
    return;
  }
  const around = open.findLast((name) => PHRASING_ONLY.has(name));
  if (around && BLOCK.has(tag)) faults.push(`<${tag}> inside <${around}>`);
  if (!selfClosed && !VOID.has(tag)) open.push(tag);
}

export function htmlFaults(html: string): string[] {
  const reading: Reading = { faults: [], open: [], ids: new Map(), references: [] };
  for (const [, slash, name = '', attributes = '', selfClosed] of html.matchAll(TAG)) {
    const tag = name.toLowerCase();
    if (!slash) readAttributes(tag, attributes, reading);
    readTag(slash === '/', tag, selfClosed === '/', reading);
  }
  const stray = html.replace(TAG, '').match(/<(?!!doctype)[^\s]{0,20}/i);
  if (stray) reading.faults.push(`"${stray[0]}" is not a tag`);
  for (const tag of reading.open) reading.faults.push(`<${tag}> is never closed`);
  for (const [id, times] of reading.ids) {
    if (times > 1) reading.faults.push(`id ${id} stands ${times} times`);
    if (/\s/.test(id) || id === '') reading.faults.push(`id "${id}" is empty or holds a space`);
  }
  for (const id of reading.references) {
    if (!reading.ids.has(id)) reading.faults.push(`nothing has the id ${id}`);
  }
  return reading.faults;
}
