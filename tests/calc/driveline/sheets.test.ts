import { describe } from 'vitest';
import { sheets } from '../../../src/calc/driveline/index.js';
import { formulaRules } from '../formula-rules.js';
import { sheetRules } from '../sheet-rules.js';
import { unitRules } from '../unit-rules.js';

describe('sheets of driveline', () => sheetRules(sheets));
describe('formulas of driveline', () => formulaRules(sheets));
describe('units of driveline', () => unitRules(sheets));
