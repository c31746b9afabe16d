export type Points = readonly (readonly [number, number])[];

/** Rows of numbers by block; blocks are parted by empty lines, or by lines that are no numbers. */
export type Blocks = readonly (readonly (readonly number[])[])[];

/** Reads the numbers of a coordinate file. Text before the first numbers is its title; decimal commas are understood. */
export function readBlocks(text: string): { readonly blocks: Blocks } | { readonly fault: string } {
  const blocks: (readonly number[])[][] = [[]];
  for (const [i, line] of text.split(/\r?\n/).entries()) {
    const row = numbersOf(line);
    const block = blocks[blocks.length - 1];
    if (row) block.push(row);
    else if (line.trim() === "") {
      if (block.length > 0) blocks.push([]);
    } else if (blocks.length > 1 || block.length > 1) return { fault: `has no two numbers on its line ${i + 1}` };
    else block.length = 0;
  }
  return { blocks: blocks.filter((block) => block.length > 0) };
}

function numbersOf(line: string): readonly number[] | undefined {
  const plain = line.replace(/(#|\/\/).*$/, "").trim();
  if (plain === "") return undefined;
  // "0,123 0,456": commas within numbers, blanks between.
  const decimal = /^-?\d*,\d+[\s;]+-?\d*,\d+/.test(plain) ? plain.replace(/,/g, ".") : plain;
  const words = decimal.split(/[\s,;]+/).filter((word) => word !== "");
  const numbers = words.map(Number);
  return words.length >= 2 && words.length <= 3 && numbers.every(Number.isFinite) ? numbers : undefined;
}
