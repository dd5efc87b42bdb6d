import type { Evidence } from '../evidence.ts';
import { type Need, need, TURN } from './need.ts';

export const ofSheet = ({ sheet }: Evidence): Need[] => [
  need(
    'valves',
    'lobe lift and valve lift, valve by valve',
    'Read lobe and valve lift of every valve, one after the other, the same way each time.',
    sheet.some(({ standing, kind }) => standing && (kind === 'lobe-lift' || kind === 'valve-lift')),
    TURN,
  ),
];
