import { tyreDimensions } from '../../calc/gearing/tyre-dimensions.js';
import {
  LOAD_INDICES,
  loadCapacity,
  type SpeedSymbol,
  speedSymbols,
  tyreTableSource,
} from '../../calc/gearing/tyre-tables.js';
import type { Source } from '../../calc/sheet.js';
import { toSI } from '../../units/unit.js';
import { type Read, type Refuse, reader } from './reading.js';

/** A car tyre by its size and service description. Lengths in m, load in kg, speed in m/s. */
export interface Tyre {
  /** In its one printed spelling. */
  text: string;
  width: number;
  /** Section height over section width, 0.65 for the 65 series. */
  aspect: number;
  rimCode: number;
  construction: 'radial' | 'diagonal' | 'bias-belted';
  rimDiameter: number;
  sectionHeight: number;
  /** Design overall diameter by the rounding rule of UN Regulation No. 30, 6.1.2. */
  overallDiameter: number;
  loadIndex?: number;
  load?: number;
  speedSymbol?: string;
  speed?: number;
  zr?: true;
  reinforced?: true;
  sources: readonly Source[];
}

const SIZE =
  /^(P)?(\d{3})\/(\d{2})\s?(ZR|R|D|B|-)\s?(F)?(\d{2})(?:\s?\(?(\d{2,3})\s?(\(Y\)|[A-Z])\)?)?((?:\s(?:XL|RF|REINFORCED|EXTRA LOAD|TL|TUBELESS|M\+S))*)$/iu;
const constructions = { R: 'radial', ZR: 'radial', D: 'diagonal', '-': 'diagonal', B: 'bias-belted' } as const;

/**
 * Reads `205/65R15 94H`, `205/65 R 15`, `P205/65R15`, `205/65ZR15 94W`, `205/65-15` (diagonal), with `XL` or `RF` behind.
 * Light-truck and commercial tyres, inch sizes and sizes without an aspect ratio are refused with the reason.
 */
export const readTyre = reader('a tyre size such as 205/65R15 94H', (body, refuse): Read<Tyre> => {
  const match = SIZE.exec(body.replaceAll(/\s?\/\s?/gu, '/'));
  if (!match) return refuse(reasonAgainst(body));
  const [, , width, aspect, mark, runFlat, rim, index, symbol, behind] = match;
  const construction = mark!.toUpperCase() as keyof typeof constructions;
  if (!width!.endsWith('5')) return refuse('section widths of car tyres end in 5: look at the sidewall again', width);
  if (Number(aspect) % 5 !== 0 || Number(aspect) < 25 || Number(aspect) > 85) {
    return refuse('aspect ratios of car tyres run from 25 to 85 in steps of 5: look at the sidewall again', aspect);
  }
  if (Number(rim) < 10 || Number(rim) > 24) return refuse('rim codes of car tyres run from 10 to 24', rim);
  const size = {
    width: toSI(width!, 'mm'),
    aspect: toSI(aspect!, '%'),
    rim: toSI(rim!, 'in'),
  };
  const service = index === undefined ? {} : serviceOf(index, symbol!, refuse);
  if ('ok' in service) return service;
  const { rimDiameter, sectionHeight, overallDiameter } = tyreDimensions.calculate({ ...size, rolling: 3.05 });
  const reinforced = /XL|RF|REINFORCED|EXTRA/iu.test(behind!);
  const code = `${width}/${aspect}${construction}${runFlat ? 'F' : ''}${rim}`;
  const description = service.loadIndex === undefined ? '' : ` ${service.loadIndex}${service.speedSymbol}`;
  return {
    ok: true,
    text: code + description + (reinforced ? ' XL' : ''),
    width: size.width,
    aspect: size.aspect,
    rimCode: Number(rim),
    construction: constructions[construction],
    rimDiameter,
    sectionHeight,
    overallDiameter,
    ...service,
    ...(construction === 'ZR' && { zr: true }),
    ...(reinforced && { reinforced: true }),
    sources: index === undefined ? tyreDimensions.sources : [...tyreDimensions.sources, tyreTableSource],
  };
});

type Service = Pick<Tyre, 'loadIndex' | 'load' | 'speedSymbol' | 'speed'>;

function serviceOf(index: string, letter: string, refuse: Refuse): Service | ReturnType<Refuse> {
  const load = loadCapacity(Number(index));
  if (load === undefined)
    return refuse(`load indices are read from ${LOAD_INDICES.first} to ${LOAD_INDICES.last}`, index);
  const speedSymbol = letter.toUpperCase();
  const speed = speedSymbols[speedSymbol.replace(/[()]/gu, '') as SpeedSymbol] as number | undefined;
  if (speed === undefined) return refuse(`speed symbols are ${Object.keys(speedSymbols).join(', ')}`, letter);
  return { loadIndex: Number(index), load, speedSymbol, speed: toSI(speed, 'km/h') };
}

function reasonAgainst(body: string): string {
  if (/^LT|LT\b|\d C\b|\dC\b/iu.test(body))
    return 'light-truck and commercial tyres have load tables of their own, which are not read here: measure the tyre';
  if (/^\d{1,2}(?:\.\d{1,2})?\s?(?:x|-)\s?\d/u.test(body))
    return 'inch sizes do not say how tall the tyre is: measure it, or take the maker’s data sheet';
  if (/^\d{3}\s?(?:R|SR|HR|VR|-)\s?\d{2}/iu.test(body))
    return 'without an aspect ratio the size does not say how tall the tyre is: measure it, or take the maker’s data sheet';
  if (/\/\d{2}\s?[SHV]R\s?\d{2}/iu.test(body))
    return 'write the speed symbol behind the load index, as in 205/65R15 94H';
  if (/\/\d{2}\s?R\s?\d{3}/iu.test(body))
    return 'rims measured in millimetres take tyres of their own, which are not read here';
  if (/\/\d{2}\s?(?:ZR|R|D|B|-)\s?\d{2}\s\S/iu.test(body))
    return 'write the load index and the speed symbol behind the size, as in 205/65R15 94H';
  return 'write width/aspect, R for radial, rim code, load index and speed symbol, as on the sidewall';
}
