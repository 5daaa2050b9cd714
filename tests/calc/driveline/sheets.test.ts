import { describe } from 'vitest';
import { sheets } from '../../../src/calc/driveline/index.js';
import { sheetRules } from '../sheet-rules.js';

describe('sheets of the driveline', () => sheetRules(sheets));
