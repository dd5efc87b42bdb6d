import type { Component } from '../../../../views/parts/components.ts';
import type { Working } from '../../../records/workings/workings.ts';
import { type FormState, selectField } from '../../../web/forms/fields.ts';
import type { Fields } from '../../../web/forms/read-form.ts';
import { pointerSaid } from '../pointer-said.ts';
import { chainOf } from '../timing-chain.ts';

export const POINTER = { pointer: 'The pointer, since the stop was read' };

/** Whether what the stop said was put right on the engine, or is to be taken off the readings. */
export function pointerComponents(shown: FormState, workings: readonly Working[]): readonly Component[] {
  const { stop } = chainOf(workings);
  if (stop === undefined || !stop.isOut) return [];
  const { todo, reads } = pointerSaid(stop.correction);
  return [
    selectField(
      shown,
      'pointer',
      POINTER.pointer,
      {
        '': 'Not said',
        moved: 'It was shifted',
        left: 'It was left',
      },
      {
        hint: `From line ${stop.working.seq}: the wheel reads ${reads} after TDC. Where it was left: ${todo}. Where it was shifted, read the stop again and keep both readings first.`,
      },
    ),
  ];
}

/** As it was said with the last reading since the stop; before there is one nobody has said it. */
export function pointerInitial(workings: readonly Working[]): Fields {
  const { stop, peaks, events } = chainOf(workings);
  if (stop === undefined || !stop.isOut) return {};
  const since = [...peaks, ...events].filter(({ working }) => working.seq > stop.working.seq);
  const last = since.toSorted((a, b) => a.working.seq - b.working.seq).at(-1);
  return {
    pointer: last?.pointer ?? '',
    pointerOff: `${Number(stop.correction.toFixed(6))} deg`,
  };
}

/** The error goes along where the pointer was left; where it was moved, that it has none. */
export const pointerTyped = ({ pointer, pointerOff = '' }: Fields): Fields =>
  pointer === 'left' ? { pointerOff } : pointer === 'moved' ? { pointerOff: '0 deg' } : {};
