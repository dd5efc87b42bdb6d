import { FAULT_CODES } from '../../../shared/problems/faults.ts';
import type { TableData } from '../../../views/parts/table.examples.ts';
import { FAULT_WORDS } from './words.ts';

/** The codes that a fault of an input can have. */
export function faultTable(): TableData {
  return {
    caption: 'Faults of an input, each at its own JSON pointer',
    columns: [{ label: 'Code' }, { label: 'What it says' }],
    rows: FAULT_CODES.map((code) => ({ cells: [code, FAULT_WORDS[code]] })),
  };
}
