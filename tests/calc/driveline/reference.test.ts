import { describe } from 'vitest';
import { sheets } from '../../../src/calc/driveline/index.js';
import values from '../../reference/driveline.json' with { type: 'json' };
import { referenceRules } from '../reference-rules.js';

describe('published values of driveline', () => referenceRules(sheets, values as never));
