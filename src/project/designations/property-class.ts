import type { Source } from '../../calc/sheet.js';
import { toSI } from '../../units/unit.js';
import { type Read, reader } from './reading.js';

/** Strengths of one range of nominal diameters, in Pa; the diameters in m. */
interface Strength {
  from: number;
  /** Included. */
  upTo: number;
  proof: number;
  tensile: number;
  /** Lower yield strength, 0.2 % proof strength, or for the whole screw at 0.0048 d, as the standard has it. */
  yield: number;
}

/** A property class or grade of bolts, screws and studs. */
export interface PropertyClass {
  text: string;
  standard: 'ISO 898-1' | 'SAE J429';
  /** In Pa at a nominal diameter in m; undefined where the standard has none for that diameter. */
  proof: (diameter: number) => number | undefined;
  tensile: (diameter: number) => number | undefined;
  yield: (diameter: number) => number | undefined;
  ranges: readonly Strength[];
  source: Source;
}

type Row = readonly [upTo: number, proof: number, tensile: number, yield_: number];

/** Diameters up to, mm, then proof, minimum tensile and minimum yield strength, MPa. 9.8 ends at 16 mm. */
const iso: Readonly<Record<string, readonly Row[]>> = {
  '4.6': [[39, 225, 400, 240]],
  '4.8': [[39, 310, 420, 340]],
  '5.6': [[39, 280, 500, 300]],
  '5.8': [[39, 380, 520, 420]],
  '6.8': [[39, 440, 600, 480]],
  '8.8': [
    [16, 580, 800, 640],
    [39, 600, 830, 660],
  ],
  '9.8': [[16, 650, 900, 720]],
  '10.9': [[39, 830, 1040, 940]],
  '12.9': [[39, 970, 1220, 1100]],
};
const ISO_FROM = 1.6;

/** Diameters up to, in, then proof, minimum tensile and minimum yield strength, ksi. */
const sae: Readonly<Record<string, readonly Row[]>> = {
  '1': [[1.5, 33, 60, 36]],
  '2': [
    [0.75, 55, 74, 57],
    [1.5, 33, 60, 36],
  ],
  '5': [
    [1, 85, 120, 92],
    [1.5, 74, 105, 81],
  ],
  '8': [[1.5, 120, 150, 130]],
};
const SAE_FROM = 0.25;

const isoSource: Source = {
  document: 'ISO 898-1',
  edition: '2013',
  clause: 'Table 3, as quoted by a maker of fasteners',
  basis: 'quoted',
};
const saeSource: Source = {
  document: 'SAE J429',
  clause:
    'mechanical requirements, as quoted in Shigley and Mischke, Mechanical Engineering Design, 5th ed., and by makers of fasteners',
  basis: 'quoted',
};

/**
 * Reads `8.8`, `class 10.9`, `SAE 5` and `SAE grade 8`. A number alone is an ISO class; a grade of SAE J429 is marked so,
 * because “8” and “8.8” are far apart.
 */
export const readPropertyClass = reader(
  'a property class such as 8.8 or SAE 5',
  (body, refuse): Read<PropertyClass> => {
    const inchGrade = /^SAE\s?(?:J429\s)?(?:grade\s?|gr\.?\s?)?([\d.]+)$/iu.exec(body)?.[1];
    if (inchGrade !== undefined) {
      const rows = Object.hasOwn(sae, inchGrade) ? sae[inchGrade] : undefined;
      if (!rows) return refuse(`grades of SAE J429 read here are ${Object.keys(sae).join(', ')}`, inchGrade);
      return {
        ok: true,
        text: `SAE ${inchGrade}`,
        standard: 'SAE J429',
        ...strengths(rows, SAE_FROM, 'in', 'ksi'),
        source: saeSource,
      };
    }
    const name = /^(?:(?:property\s)?class\s?|ISO\s?)?([\d.]+)$/iu.exec(body)?.[1];
    const rows = name !== undefined && Object.hasOwn(iso, name) ? iso[name] : undefined;
    if (rows)
      return {
        ok: true,
        text: name!,
        standard: 'ISO 898-1',
        ...strengths(rows, ISO_FROM, 'mm', 'MPa'),
        source: isoSource,
      };
    const grade = /^(?:grade\s?|gr\.?\s?)?([1258])$/iu.exec(body)?.[1];
    if (grade !== undefined)
      return refuse(`write SAE ${grade} for the inch grade; metric classes have a point, as 8.8`);
    if (/^A[1-5]-?\d*/iu.test(body))
      return refuse(
        'stainless fasteners have classes of their own (ISO 3506), which are not read here: give the strength from their certificate',
      );
    return refuse(
      `classes are ${Object.keys(iso).join(', ')}, or SAE ${Object.keys(sae).join(', ')}: read the mark on the head`,
    );
  },
);

function strengths(
  rows: readonly Row[],
  from: number,
  length: string,
  stress: string,
): Pick<PropertyClass, 'ranges' | 'proof' | 'tensile' | 'yield'> {
  const ranges = rows.map(([upTo, proof, tensile, yield_], i) => ({
    from: toSI(i === 0 ? from : rows[i - 1]![0], length),
    upTo: toSI(upTo, length),
    proof: toSI(proof, stress),
    tensile: toSI(tensile, stress),
    yield: toSI(yield_, stress),
  }));
  const at = (what: 'proof' | 'tensile' | 'yield') => (diameter: number) =>
    diameter < ranges[0]!.from ? undefined : ranges.find((r) => diameter <= r.upTo)?.[what];
  return { ranges, proof: at('proof'), tensile: at('tensile'), yield: at('yield') };
}
