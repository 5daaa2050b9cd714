import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { kinds } from '../../src/checks/kinds/index.js';
import type { FieldMeta } from '../../src/project/fields.js';
import { rangeOf } from '../../src/project/measurement-classes.js';
import { buildSchema } from '../../src/project/vehicle.js';
import { sameDimension, unit } from '../../src/units/unit.js';

/** Every field of a quantity refuses what cannot be: below its zero, a turn and more, a level below silence. */
interface Found {
  name: string;
  schema: z.ZodType;
  meta: FieldMeta;
}
function fieldsIn(shape: z.ZodRawShape, above: string): Found[] {
  return Object.entries(shape).flatMap(([key, schema]) => {
    const name = `${above} ${key}`;
    const meta = (schema as z.ZodType).meta() as FieldMeta | undefined;
    if (meta?.form === 'quantity' || meta?.form === 'slope') return [{ name, schema: schema as z.ZodType, meta }];
    const inner = shapeOf(schema as z.ZodType);
    return inner ? fieldsIn(inner, name) : [];
  });
}
function shapeOf(schema: z.ZodType): z.ZodRawShape | undefined {
  if (schema instanceof z.ZodOptional) return shapeOf(schema.unwrap() as z.ZodType);
  if (schema instanceof z.ZodArray) return shapeOf(schema.element as z.ZodType);
  return schema instanceof z.ZodObject ? schema.shape : undefined;
}

const all = [...[...kinds].flatMap(([id, kind]) => fieldsIn(kind.shape, id)), ...fieldsIn(buildSchema.shape, 'build')];
const takes = ({ schema }: Found, text: string) => schema.safeParse(text).success;
const isA = (of: string, { meta }: Found) =>
  meta.unit !== undefined && sameDimension(unit(meta.unit).dimension, unit(of).dimension);
const isScale = ({ meta }: Found) => meta.unit !== undefined && unit(meta.unit).offset !== undefined;

describe('the range of a field', () => {
  it('is there for all of them', () => {
    expect(all.length).toBeGreaterThan(500);
  });

  it('has no value below zero where a sign has no meaning', () => {
    const plain = all.filter((f) => f.meta.form === 'quantity' && f.meta.unit !== undefined && !isScale(f));
    const takesMinus = plain.filter((f) => takes(f, `-5 ${f.meta.unit === '1' ? '' : f.meta.unit}`));
    const unsigned = ({ meta }: Found) => meta.range !== 'signed' && rangeOf(meta.measuredAs)[0] >= 0;
    expect(takesMinus.filter(unsigned).map((f) => f.name)).toEqual([]);
    // An offset, a change, a slope of the road and a place ahead or behind have a sign; most have none.
    expect(takesMinus.length).toBeLessThan(plain.length / 8);
  });

  it('of an angle ends with a turn', () => {
    const angles = all.filter((f) => f.meta.form === 'quantity' && isA('deg', f));
    expect(angles.length).toBeGreaterThan(10);
    expect(angles.filter((f) => takes(f, '362.9 deg')).map((f) => f.name)).toEqual([]);
  });

  it('of an angle with its direction ends with a quarter turn', () => {
    const slopes = all.filter((f) => f.meta.form === 'slope');
    expect(slopes.length).toBeGreaterThan(10);
    const words = ['nose up', 'to the left', 'top out', 'top to the rear', 'toe in'];
    expect(slopes.filter((f) => words.some((word) => takes(f, `90.1 deg ${word}`))).map((f) => f.name)).toEqual([]);
    expect(slopes.filter((f) => !words.some((word) => takes(f, `3 deg ${word}`))).map((f) => f.name)).toEqual([]);
  });

  it('of a sound level begins with silence: −88.9 dB(A)', () => {
    const levels = all.filter((f) => f.meta.unit === 'dB(A)');
    expect(levels.length).toBeGreaterThan(3);
    expect(levels.filter((f) => takes(f, '-88.9 dB(A)') || !takes(f, '88.9 dB(A)')).map((f) => f.name)).toEqual([]);
  });

  it('of a temperature begins above the coldest that can be', () => {
    const scales = all.filter(isScale);
    expect(scales.filter((f) => takes(f, '-300 degC') || !takes(f, '20 degC')).map((f) => f.name)).toEqual([]);
  });

  it('of a track: −1400 mm', () => {
    const tracks = all.filter((f) => /track/.test(f.name) && isA('mm', f));
    expect(tracks.length).toBeGreaterThan(3);
    expect(tracks.filter((f) => takes(f, '-1400 mm')).map((f) => f.name)).toEqual([]);
  });

  it('of a value of any dimension has a level and a temperature that can be', () => {
    const any = all.filter((f) => f.meta.unit === undefined && f.meta.range === 'signed');
    expect(any.length).toBeGreaterThan(3);
    for (const text of ['-88.9 dB(A)', '-300 degC'])
      expect([text, any.filter((f) => takes(f, text)).map((f) => f.name)]).toEqual([text, []]);
    for (const text of ['-3 mm', '88.9 dB(A)', '-5 degC', '1080 deg'])
      expect([text, any.filter((f) => !takes(f, text)).map((f) => f.name)]).toEqual([text, []]);
  });
});

/** Where a field asks for the least, the greatest, or several places, a list of them has no mean. */
describe('a field that speaks of several places', () => {
  const asks = (field: Found) =>
    /\b(?:the (?:least|smallest|greatest|largest|greater|thinnest|narrowest)|(?:least|smallest|greatest) (?:gap|distance|radius|free play)|(?:two|three|four|five|eight|several|thinnest) places|run-out)\b/.test(
      `${field.meta.says}; ${field.meta.how ?? ''}`,
    ) && isA('mm', field);
  it('says which of them decides', () => {
    const speaking = all.filter((f) => asks(f) && f.meta.measuredAs !== 'named');
    expect(speaking.length).toBeGreaterThan(25);
    expect(
      speaking.filter((f) => f.meta.places === undefined).map((f) => `${f.name}: ${f.meta.says}; ${f.meta.how}`),
    ).toEqual([]);
  });
});
