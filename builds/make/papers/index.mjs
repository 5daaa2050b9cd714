import { certifying } from './certifying.mjs';
import { makers } from './makers.mjs';
import { reports } from './reports.mjs';
import { welding } from './welding.mjs';

/** The papers of the build by the name of their file. */
export const papers = { ...certifying, ...makers, ...reports, ...welding };
