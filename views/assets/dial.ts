import { toSi } from '../../shared/quantities/units.ts';
import { readTyped } from './echo.ts';

/** Turns one hand by so many degrees from where it was drawn. */
function turnHand(dial: Element, of: 'needle' | 'small', degrees: number): void {
  const hand = dial.querySelector<SVGGElement>(`[data-hand="${of}"]`);
  if (hand === null) return;
  const { x = '0', y = '0' } = hand.dataset;
  hand.setAttribute('transform', `rotate(${degrees.toFixed(2)} ${x} ${y})`);
}

/** The dial shows what is being typed, as it is read; what cannot be read leaves it where it is. */
function follow(dial: HTMLElement, field: HTMLInputElement): void {
  const typed = readTyped(field);
  if (typed?.perTurn === undefined || !typed.read.ok) return;
  const { value, unit, readAs } = typed.read;
  if (unit === undefined) return;
  const turns = toSi({ value, unit }) / toSi(typed.perTurn);
  const more = turns - Number(dial.dataset.turns ?? '0');
  const runs = dial.dataset.runs === 'clockwise' ? 1 : -1;
  turnHand(dial, 'needle', runs * more * 360);
  turnHand(dial, 'small', (dial.dataset.small === 'up' ? 1 : runs) * more * 36);
  const said = dial.querySelector('[data-dial-said]');
  if (said !== null) said.textContent = `As typed: ${readAs}`;
}

/** A dial beside the field of its reading follows what is typed there. */
export function followTyping(): void {
  document.addEventListener('input', ({ target }) => {
    if (!(target instanceof HTMLInputElement)) return;
    for (const dial of document.querySelectorAll<HTMLElement>(`[data-follows="${CSS.escape(target.id)}"]`))
      follow(dial, target);
  });
}
