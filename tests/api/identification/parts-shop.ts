import { afterAll, beforeAll, expect } from 'vitest';
import { identificationView } from '../../../server/assessment/identification/view.ts';
import { sendJson } from '../../tools/call.ts';
import { loadDemoCatalogue } from '../../tools/demo-catalogue.ts';
import { type Person, type TestService, testService } from '../../tools/service.ts';

/** A shop with the invented catalogue, and what is read of parts in the hand on its calls. */
export interface PartsShop {
  readonly service: TestService;
  readonly owner: Person;
  /** Sends one reading of a part. */
  keep(buildId: string, body: object, who?: Person['bearer']): ReturnType<typeof sendJson>;
  /** Keeps readings one after the other, and answers their ids. */
  kept(buildId: string, ...bodies: object[]): Promise<string[]>;
  /** What the readings come to. */
  found(buildId: string): Promise<Found>;
  /** The same of the one part in the hand. */
  foundFirst(buildId: string): Promise<FirstFound>;
}

type Found = ReturnType<typeof identificationView.parse>;
type PartFound = Found['parts'][number];
type FirstFound = Omit<Found, 'parts'> &
  Omit<PartFound, 'readings'> & {
    readonly readings: Found['readings'];
    /** The readings that are of this part. */
    readonly of: PartFound['readings'];
  };

/** The shop of a file of tests, over one service. */
export function partsShop(): PartsShop {
  let service: TestService;
  let owner: Person;
  beforeAll(async () => {
    service = await testService();
    owner = await service.person();
    await loadDemoCatalogue(service, owner);
  });
  afterAll(() => service.close());
  const identification = (buildId: string) => `/api/v1/builds/${buildId}/identification`;
  const keep: PartsShop['keep'] = (buildId, body, who = owner.bearer) =>
    sendJson(service, who, 'POST', `${identification(buildId)}/readings`, body);
  const found = async (buildId: string) => {
    const { status, json, text } = await sendJson(service, owner.bearer, 'GET', identification(buildId));
    expect(status, text).toBe(200);
    return identificationView.parse(json);
  };
  return {
    get service() {
      return service;
    },
    get owner() {
      return owner;
    },
    keep,
    async kept(buildId, ...bodies) {
      const ids: string[] = [];
      for (const body of bodies) {
        const { status, json, text } = await keep(buildId, body);
        expect(status, text).toBe(201);
        ids.push(String(json.id));
      }
      return ids;
    },
    found,
    async foundFirst(buildId) {
      const { parts, ...whole } = await found(buildId);
      const [part] = parts;
      if (part === undefined) throw new Error('there is a part in the hand');
      return { ...whole, ...part, readings: whole.readings, of: part.readings };
    },
  };
}

/** Where readings of a build’s parts are kept. */
export const readingsUrl = (buildId: string) => `/api/v1/builds/${buildId}/identification/readings`;
