import { describe } from 'vitest';
import { sheets } from '../../../src/calc/mass/index.js';
import { formulaRules } from '../formula-rules.js';
import { sheetRules } from '../sheet-rules.js';
import { unitRules } from '../unit-rules.js';

describe('sheets of mass', () => sheetRules(sheets));
describe('formulas of mass', () => formulaRules(sheets));
describe('units of mass', () => unitRules(sheets));
