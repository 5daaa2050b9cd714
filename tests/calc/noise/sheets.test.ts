import { describe } from 'vitest';
import { sheets } from '../../../src/calc/noise/index.js';
import { formulaRules } from '../formula-rules.js';
import { sheetRules } from '../sheet-rules.js';
import { unitRules } from '../unit-rules.js';

describe('sheets of noise', () => sheetRules(sheets));
describe('formulas of noise', () => formulaRules(sheets));
describe('units of noise', () => unitRules(sheets));
