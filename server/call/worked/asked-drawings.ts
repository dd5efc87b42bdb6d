import type { Component } from '../../../views/parts/components.ts';
import { type AdjusterPlace, adjusterTurned } from '../../drawings/adjuster-turned.ts';
import { type Drawing, rulerOf } from '../../drawings/drawing.ts';
import { equalDrop } from '../../drawings/equal-drop.ts';
import { lashGap } from '../../drawings/lash-gap.ts';
import { partDrawing } from '../../drawings/part.ts';
import { positiveStop } from '../../drawings/positive-stop.ts';
import { tipMarkAsked } from '../../drawings/tip-mark.ts';
import { wheelAtStop, wheelEvents } from '../../drawings/wheel-asked.ts';
import type { Fields } from '../../web/forms/read-form.ts';
import type { CallContext } from '../context.ts';
import type { PartName } from './parts.ts';

const PLACES: readonly AdjusterPlace[] = ['stud-nut', 'cup-screw', 'valve-end-screw'];

function adjusterDrawing(typed: Fields): Drawing {
  const mount = PLACES.find((place) => place === typed.mount) ?? 'stud-nut';
  const lifter = typed.lifter === 'solid' ? 'solid' : 'hydraulic';
  return adjusterTurned({ mount, lifter }, { id: 'asked-adjuster', ruler: rulerOf('inch') });
}

/** What is looked at or measured in a part, drawn before anything is typed. */
export function neutralDrawings(part: PartName, typed: Fields): readonly Drawing[] {
  switch (part) {
    case 'marks':
      return [tipMarkAsked('asked-mark')];
    case 'roller-sweep':
      return [partDrawing('asked-arm', 'pivot-to-tip')];
    case 'linkage':
      return [partDrawing('asked-linkage', undefined)];
    case 'top-dead-centre':
      return [positiveStop('asked-stop'), wheelAtStop('asked-wheel')];
    case 'centreline':
      return [equalDrop('asked-drop')];
    case 'events':
    case 'cam-timing':
      return [wheelEvents('asked-events', typed.side === 'exhaust' ? 'exhaust' : 'intake')];
    case 'adjuster':
      return [adjusterDrawing(typed)];
    case 'lash':
    case 'lash-hot-cold':
      return [lashGap({}, { id: 'asked-lash', ruler: rulerOf('inch') })];
  }
}

export function drawingComponents(drawings: readonly Drawing[]): Component[] {
  const slots = drawings.map((data): Component => ({ template: '/parts/drawing', data }));
  return slots.length > 1 ? [{ template: '/pages/call/side-by-side', data: { slots } }] : slots;
}

export interface Arranged {
  readonly drawings: readonly Component[];
  readonly entry: readonly Component[];
  /** What the newest entry says or asks. */
  readonly top: readonly Component[];
  /** All else that stands. */
  readonly rest: readonly Component[];
  /** Something was kept already. */
  readonly begun: boolean;
}

/**
 * At the desk the entry has the focus and stands first, and once something is kept its answer goes before the drawing
 * of how it is measured. At the bench the newest answer comes first, then where the tool goes, then the entry.
 */
export function arranged(context: CallContext, { drawings, entry, top, rest, begun }: Arranged): Component[] {
  if (context.side === 'bench') return [...top, ...drawings, ...entry, ...rest];
  return begun ? [...entry, ...top, ...rest, ...drawings] : [...entry, ...drawings, ...top, ...rest];
}
