import { certifying } from './certifying.mjs';
import { extracts } from './extracts.mjs';
import { letters } from './letters.mjs';
import { makers } from './makers.mjs';
import { reports } from './reports.mjs';
import { welding } from './welding.mjs';

/** The papers of the build by the name of their file. */
export const papers = { ...certifying, ...letters, ...makers, ...extracts, ...reports, ...welding };
