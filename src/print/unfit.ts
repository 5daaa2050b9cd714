/** Why a PDF cannot be looked into, in words that follow its name. */
export class Unfit extends Error {}

/** What is laid out otherwise than viewers expect is mended by each of them in its own way. */
export const notWhole = (why?: string): Unfit => new Unfit(`is no whole PDF${why === undefined ? '' : `: ${why}`}`);
