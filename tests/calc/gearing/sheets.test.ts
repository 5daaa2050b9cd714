import { describe } from 'vitest';
import { sheets } from '../../../src/calc/gearing/index.js';
import { formulaRules } from '../formula-rules.js';
import { sheetRules } from '../sheet-rules.js';
import { unitRules } from '../unit-rules.js';

describe('sheets of gearing', () => sheetRules(sheets));
describe('formulas of gearing', () => formulaRules(sheets));
describe('units of gearing', () => unitRules(sheets));
