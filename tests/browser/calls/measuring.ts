import type { Hand } from './hand.ts';

export interface HowMeasured {
  readonly cylinder?: string;
  readonly valve?: 'Intake' | 'Exhaust';
  readonly spring: string;
  readonly lifter: string;
  readonly lash: string;
}

/** The arm on record with its stamp, and the valve it sits on. */
export async function recordArm(
  desk: Hand,
  arm: { name: string; stamp: string; sold: string },
): Promise<void> {
  await desk.press(/^Rocker arms/);
  await desk.fill('Name of this arm on the call', arm.name);
  await desk.fill('What looks like a ratio on it', arm.stamp);
  await desk.press(/^Save this arm/);
  await desk.fill('Cylinder', '1');
  await desk.press(/^Save this place/);
  await desk.fill('Ratio the rockers are sold as', arm.sold);
  await desk.press(/^Save as a new revision/);
}

export async function readCard(
  desk: Hand,
  card: { ratio: string; intake: string; exhaust: string; lash?: string },
): Promise<void> {
  await desk.press(/^Cam card/);
  await desk.fill('Rocker ratio the card assumes', card.ratio);
  await desk.fill('Lobe lift, intake', card.intake);
  await desk.fill('Lobe lift, exhaust', card.exhaust);
  if (card.lash !== undefined) await desk.fill('Lash on the card, intake', card.lash);
  await desk.press(/^Save as a new revision/);
}

/** Method before the first reading: one page at the desk. */
export async function setUpAtDesk(desk: Hand, how: HowMeasured): Promise<void> {
  if (how.cylinder !== undefined) await desk.fill('Cylinder', how.cylinder);
  if (how.valve !== undefined) await desk.select('Which valve', how.valve);
  await desk.choose('Spring on the valve', how.spring);
  await desk.choose('Lifter under the pushrod', how.lifter);
  await desk.choose('Lash', how.lash);
  await desk.choose('The tip of the indicator rests on', 'Flat face of the retainer');
  await desk.choose('The plunger stands', 'Parallel to the stem');
  await desk.press(/^Start this set-up/);
}

/** One pass after the other, each with the zero that came back. */
export async function read(hand: Hand, ...passes: string[]): Promise<void> {
  for (const pass of passes) {
    await hand.fill('Reading at full lift', pass);
    await hand.fill('Hand back on the base circle at', '0');
    await hand.press(/^Save reading/);
  }
}
