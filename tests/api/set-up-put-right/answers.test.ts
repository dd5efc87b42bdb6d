import { describe, expect, test } from 'vitest';
import { at } from '../../tools/numbers.ts';
import { textOf as text } from '../../tools/page-text.ts';
import { fieldsOf, openSetUps } from './set-up-read.ts';

/** What is told of a set-up later holds for the readings already there, by JSON and by form. Figures by hand. */

const { read } = openSetUps();

describe('how far the plunger leans, as the answer to its question', () => {
  const leaning = async () => {
    const call = await read({ spring: 'light', alignment: 'leaning' });
    const asked = await call.question('plunger-tilted');
    const said = { question: 'plunger-tilted', code: 'plunger-tilted', setUpId: call.setUpId };
    return { ...call, asked, said };
  };

  test('in degrees, in JSON', async () => {
    const { send, asked, said, question } = await leaning();
    expect(at(asked, 'answers', 1)).toMatchObject({ code: 'leaning', takesLean: true, takesValue: false });
    const { json, status } = await send('/answers', { ...said, answer: 'leaning', lean: '12 deg' });
    expect(status).toBe(201);
    expect(at(json, 'value')).toMatchObject({ value: 12, unit: 'deg' });
    const now = await question('plunger-tilted');
    expect(at(now, 'answered', 'answer')).toBe('leaning, 12 deg');
    expect(at(now, 'size')).toMatch(/^12 deg makes \.540 in of /);
  });

  test('on the page an angle alone says that it leans', async () => {
    const { page, post, question } = await leaning();
    const html = await page();
    const name =
      /<form[^>]*id="(answer-\d+)"(?:(?!<\/form>)[\s\S])*?value="plunger-tilted"/.exec(html)?.[1] ?? '';
    const fields = { ...fieldsOf(html, name), answer: '', lean: '12' };
    expect((await post('/answers', fields)).statusCode).toBe(303);
    expect(at(await question('plunger-tilted'), 'answered', 'answer')).toBe('leaning, 12 deg');
  });

  test('one that cannot be is refused at its field', async () => {
    const { send, said } = await leaning();
    for (const [answer, lean] of [
      ['leaning', '60 deg'],
      ['parallel', '5 deg'],
      ['leaning', '.5 in'],
    ]) {
      const refused = await send('/answers', { ...said, answer, lean });
      expect([refused.status, at(refused.json, 'errors', 0, 'pointer')]).toEqual([422, '/lean']);
    }
    const elsewhere = await send('/answers', {
      ...said,
      code: 'zero-not-returned',
      answer: 'found',
      lean: '5 deg',
    });
    expect(at(elsewhere.json, 'errors', 0, 'pointer')).toBe('/lean');
  });
});

describe('the lash as the answer to its question', () => {
  test('with its amount, in JSON', async () => {
    const { send, question, ratio } = await read({ spring: 'light', lash: 'not-said' });
    const asked = await question('lash-not-said');
    expect(at(asked, 'answers', 1)).toMatchObject({ code: 'set', takesValue: true });
    const { json, status } = await send('/answers', {
      question: at(asked, 'ask'),
      questionId: at(asked, 'id'),
      setUpId: at(asked, 'about', 'setUpId'),
      code: 'lash-not-said',
      answer: 'set',
      value: '20 thou',
    });
    expect(status).toBe(201);
    expect(at(json, 'value', 'readAs')).toBe('20 thou = .020 in');
    expect(at(await ratio(), 'known', 'lashSetting', 'value')).toBeCloseTo(0.02, 9);
  });

  test('an amount in words alone is asked back, in JSON and on the page, with what was typed', async () => {
    const { send, setUpId, page, post, ratio } = await read({ spring: 'light', lash: 'not-said' });
    const said = { question: 'lash-not-said', setUpId, code: 'lash-not-said', answer: 'left in, .020 in' };
    const refused = await send('/answers', said);
    expect(refused.status).toBe(422);
    expect(at(refused.json, 'errors', 0, 'pointer')).toBe('/value');
    expect(at(refused.json, 'errors', 0, 'detail')).toContain('Is that the lash: .020 in?');
    const html = await page();
    const name =
      /<form[^>]*id="(answer-\d+)"(?:(?!<\/form>)[\s\S])*?value="lash-not-said"/.exec(html)?.[1] ?? '';
    const back = await post('/answers', { ...fieldsOf(html, name), words: 'he says .020 in' });
    expect(back.statusCode).toBe(422);
    expect(text(back.body)).toContain('Is that the lash: .020 in?');
    const again = fieldsOf(back.body, name);
    expect([again.answer, again.value, again.words]).toEqual(['set', '.020 in', 'he says .020 in']);
    expect((await post('/answers', again)).statusCode).toBe(303);
    expect(at(await ratio(), 'known', 'lashSetting', 'value')).toBeCloseTo(0.02, 9);
  });

  test('the log’s lash is offered, and kept when it is confirmed', async () => {
    const { send, page, post, ratio } = await read({ spring: 'light', lash: 'not-said' });
    await send('/lash', {
      cylinder: 1,
      valve: 'intake',
      lash: '.018 in',
      moment: 'set',
      readOn: '2020-03-12',
    });
    expect(at(await ratio(), 'known', 'lash')).toBe('not-said');
    const html = await page();
    expect(text(html)).toContain('Yes, the .018 in that was set on 2020-03-12');
    const name =
      /<form[^>]*id="(answer-\d+)"(?:(?!<\/form>)[\s\S])*?value="lash-not-said"/.exec(html)?.[1] ?? '';
    const fields = { ...fieldsOf(html, name), answer: 'as-logged' };
    expect((await post('/answers', fields)).statusCode).toBe(303);
    expect(at(await ratio(), 'known', 'lashSetting', 'value')).toBeCloseTo(0.018, 9);
  });

  test('zero with an amount beside it is refused', async () => {
    const { send, setUpId } = await read();
    const said = {
      question: 'lash-not-said',
      setUpId,
      code: 'lash-not-said',
      answer: 'zero',
      value: '.02 in',
    };
    expect((await send('/answers', said)).status).toBe(422);
  });
});
