/** The name of an input or result as it is typed: `gasketBore` is `gasket-bore`; `Ix` stays `Ix`. */
export function typedName(name: string): string {
  return name.replaceAll(/(?<=[a-z0-9])[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}
