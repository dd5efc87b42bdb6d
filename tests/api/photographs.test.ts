import { crc32, deflateSync } from 'node:zlib';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { z } from 'zod';
import { openCall } from '../tools/call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/** C8 of the service standards: bytes, pixels, first bytes, made again, own names, quota. Pictures are made here. */
let service: TestService;
let person: Person;
let buildId: string;

beforeAll(async () => {
  service = await testService();
  person = await service.person();
  ({ buildId } = await openCall(service, person));
});
afterAll(() => service.close());

const keptPhoto = z.looseObject({ id: z.uuid(), width: z.number(), height: z.number() });

function send(
  body: Buffer,
  type = 'image/jpeg',
  query = 'shows=part',
  who: { authorization: string } = person.bearer,
) {
  return service.request({
    method: 'POST',
    url: `/api/v1/builds/${buildId}/photographs?${query}`,
    headers: { ...who, 'content-type': type },
    payload: body,
  });
}

const photo = (width = 800, height = 400) =>
  sharp({ create: { width, height, channels: 3, background: { r: 120, g: 90, b: 60 } } });

/** A PNG whose header claims more pixels than it has bytes: the shape of a decompression bomb. */
function bomb(width: number, height: number): Buffer {
  const chunk = (type: string, data: Buffer) => {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const out = Buffer.alloc(body.length + 8);
    out.writeUInt32BE(data.length, 0);
    body.copy(out, 4);
    out.writeUInt32BE(crc32(body), body.length + 4);
    return out;
  };
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 2, 0, 0, 0], 8);
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    signature,
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(Buffer.alloc(1_000_000))),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

test('a photograph is made again; place, time and device are gone, and it stands as it was held', async () => {
  const held = await photo(800, 400)
    .withExif({
      IFD0: { Make: 'A phone', Orientation: '6' },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '52/1 31/1 12/1' },
    })
    .withMetadata({ orientation: 6 })
    .jpeg()
    .toBuffer();
  expect(
    (await sharp(held).metadata()).exif,
    'the picture must carry data for this test to mean anything',
  ).toBeDefined();
  const kept = await send(held, 'image/jpeg', 'shows=ratio-stamp&caption=left%20side');
  expect(kept.statusCode).toBe(201);
  const body = keptPhoto.parse(kept.json());
  expect([body.width, body.height]).toEqual([400, 800]);
  const back = await service.request({
    url: `/api/v1/builds/${buildId}/photographs/${body.id}`,
    headers: person.bearer,
  });
  expect(back.headers['content-type']).toBe('image/jpeg');
  expect(back.headers['content-disposition']).toBe(`inline; filename="${body.id}.jpg"`);
  expect(back.headers['x-content-type-options']).toBe('nosniff');
  const { exif, xmp, iptc, orientation } = await sharp(back.rawPayload).metadata();
  expect([exif, xmp, iptc, orientation]).toEqual([undefined, undefined, undefined, undefined]);
  expect(back.rawPayload.includes(Buffer.from('A phone'))).toBe(false);
});

test.each([
  ['a text', Buffer.from('This is not a photograph, whatever it says.')],
  ['a page', Buffer.from('<html><script>alert(1)</script></html> ................')],
  [
    'a drawing with a script',
    Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>'),
  ],
  ['a PDF', Buffer.from('%PDF-1.7 .......................')],
  ['a GIF', Buffer.from('GIF89a..........................')],
  ['nothing', Buffer.alloc(0)],
  [
    'the first bytes of a JPEG and then rubbish',
    Buffer.concat([Buffer.from([0xff, 0xd8, 0xff, 0xe0]), Buffer.alloc(5000, 7)]),
  ],
])('%s under the name of a photograph is refused', async (_name, bytes) => {
  const answer = await send(bytes);
  expect([400, 415]).toContain(answer.statusCode);
  expect(answer.headers['content-type']).toContain('problem+json');
});

test('a small file that claims billions of pixels is refused by its header', async () => {
  const answer = await send(bomb(60_000, 60_000), 'image/png');
  expect(answer.statusCode).toBe(415);
  expect(answer.json()).toMatchObject({ detail: expect.stringMatching(/too large when unpacked/) });
});

test('more bytes than allowed are refused', async () => {
  const answer = await send(Buffer.alloc(13 * 1024 * 1024, 1));
  expect(answer.statusCode).toBe(413);
});

test('PNG and WebP are taken, told by their content whatever the header says, and come back as JPEG', async () => {
  for (const picture of [await photo().png().toBuffer(), await photo().webp().toBuffer()]) {
    const kept = await send(picture, 'image/jpeg');
    expect(kept.statusCode).toBe(201);
    const back = await service.request({
      url: `/api/v1/builds/${buildId}/photographs/${keptPhoto.parse(kept.json()).id}`,
      headers: person.bearer,
    });
    expect((await sharp(back.rawPayload).metadata()).format).toBe('jpeg');
  }
});

test('a photograph can’t be hung on another build’s reading, nor on another shop’s build', async () => {
  const picture = await photo().jpeg().toBuffer();
  const foreign = await send(picture, 'image/jpeg', `shows=part&readingId=${crypto.randomUUID()}`);
  expect(foreign.statusCode).toBe(404);
  const stranger = await service.person();
  expect((await send(picture, 'image/jpeg', 'shows=part', stranger.bearer)).statusCode).toBe(404);
});
