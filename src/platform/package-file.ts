/** A file that comes with the program, by its path in the package. The bundle lies as deep in the package as this folder does. */
export const packageFile = (path: string): URL => new URL(`../../${path}`, import.meta.url);
