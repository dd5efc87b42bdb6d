import { type Assessed, type Law, passesIn, placeOf, setUpsNow } from './law.ts';
import { scansAreTold } from './scans.ts';

/** Numbers that cannot be told: no answer may hold one. */
function notNumbers(value: unknown, path: string): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${path} is ${value}`];
  if (typeof value !== 'object' || value === null) return value === null ? [`${path} is null`] : [];
  return Object.entries(value).flatMap(([key, each]) => notNumbers(each, `${path}/${key}`));
}

/** Every valve that a lift was read on is explained, or says why it cannot be. */
function explained(assessed: Assessed): string[] {
  const { evidence, assessment } = assessed;
  const read = setUpsNow(assessed).filter((setUp) =>
    passesIn(evidence, setUp, 'valve-lift').some(({ value }) => value > 0),
  );
  return read.flatMap((setUp) => {
    const own = assessment.explanations.find(({ setUpIds }) => setUpIds.includes(setUp.id));
    const headline = assessment.headlines.some(
      ({ about, id }) =>
        id.startsWith('headline:ratio:') && about.of === 'valve' && placeOf(about) === placeOf(setUp),
    );
    return [
      ...(own?.result === undefined && (own?.refused ?? '') === ''
        ? [`${setUp.id}: not explained, and not said why`]
        : []),
      ...(headline ? [] : [`${setUp.id}: its valve has no headline`]),
    ];
  });
}

/** Readings of a length that a lift can have are always weighed: no flag is put on one that cannot carry it. */
const refusals = ({ assessment }: Assessed): string[] =>
  assessment.explanations.flatMap(({ id, refused }) =>
    refused === undefined ? [] : [`${id}: sound readings refused: ${refused}`],
  );

/** Law 7: what cannot be computed says so. */
export const whatCannotBeComputedSaysSo: Law = (assessed) => {
  const { quantities, judgements, headlines, questions } = assessed.assessment;
  const ids = [...quantities, ...judgements, ...headlines, ...questions].map(({ id }) => id);
  const twice = ids.filter((id, index) => ids.indexOf(id) !== index);
  return [
    ...notNumbers(assessed.assessment, ''),
    ...explained(assessed),
    ...scansAreTold(assessed),
    ...refusals(assessed),
    ...quantities
      .filter(({ value, low, high, lacks }) => (value ?? low ?? high) === undefined && lacks.length === 0)
      .map(({ id }) => `${id}: no value, and not said what it lacks`),
    ...assessed.evidence.setUps
      .filter(({ id }) => !quantities.some((quantity) => quantity.id === `set-up-ratio:${id}`))
      .map(({ id }) => `${id}: its ratio is not there`),
    ...[...judgements, ...headlines]
      .filter(({ sentence }) => sentence.trim() === '')
      .map(({ id }) => `${id}: says nothing`),
    ...twice.map((id) => `${id}: two things of one id`),
  ];
};
