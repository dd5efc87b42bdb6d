import { memberOf } from '../../../shared/member.ts';
import type { InputFault } from '../../../shared/problems/faults.ts';
import type { FormFault } from '../../web/forms/read-form.ts';
import type { Leaf } from './control.ts';
import { labelOf } from './words.ts';

/** What came, in a few words; a whole object or list is on the page as it was typed. */
function cameAs(received: unknown): string {
  if (typeof received === 'string') return received.length > 60 ? '' : `; “${received}” came`;
  if (typeof received === 'number' || typeof received === 'boolean') return `; ${received} came`;
  if (typeof received !== 'object' || received === null) return '';
  const value = memberOf(received, 'value');
  const unit = memberOf(received, 'unit');
  return typeof value === 'number' && typeof unit === 'string' ? `; ${value} ${unit} came` : '';
}

/** Where inside an entry the fault is: its line, and which part of the line. */
function placeWithin(rest: readonly string[]): string {
  const words = rest
    .filter((part) => part !== 'value' && part !== 'unit' && part !== 'values' && part !== 'side')
    .map((part) => (/^\d+$/.test(part) ? `no. ${Number(part) + 1}` : labelOf(part).toLowerCase()));
  return words.length === 0 ? '' : `${words.join(', ')} `;
}

function partsOf(pointer: string): string[] {
  return pointer
    .split('/')
    .slice(1)
    .map((part) => part.replaceAll('~1', '/').replaceAll('~0', '~'));
}

/** The entry a pointer leads to: the one whose place begins it, or the first one within that place. */
function leafAt(
  parts: readonly string[],
  leaves: readonly Leaf[],
): { leaf: Leaf; rest: string[] } | undefined {
  for (let length = parts.length; length > 0; length -= 1) {
    const name = parts.slice(0, length).join('.');
    const leaf = leaves.find((each) => each.name === name);
    if (leaf !== undefined) return { leaf, rest: parts.slice(length) };
    const first = leaves.find((each) => each.name.startsWith(`${name}.`));
    if (first !== undefined) return { leaf: first, rest: [] };
  }
  return undefined;
}

/** The faults of a body at the entries of the form that it came from. */
export function shownFaults(faults: readonly InputFault[], leaves: readonly Leaf[]): FormFault[] {
  return faults.map((fault) => {
    const parts = partsOf(fault.pointer);
    const found = leafAt(parts, leaves);
    const detail = fault.detail.replace(/\.$/, '');
    // Some details quote what came already.
    const quoted = typeof fault.received === 'string' && detail.includes(`"${fault.received}"`);
    const came = quoted ? '' : cameAs(fault.received);
    if (found === undefined) return { field: '', detail: `${parts.join(' ')} ${detail}${came}`.trim() };
    return { field: found.leaf.name, detail: `${placeWithin(found.rest)}${detail}${came}` };
  });
}
