import { extname } from 'node:path';

const endings = new Set(['.jpg', '.jpeg', '.png', '.webp', '.tif', '.tiff', '.avif', '.heic', '.heif']);

/** Whether a file is a picture by its name. */
export const isPicture = (name: string): boolean => endings.has(extname(name).toLowerCase());
