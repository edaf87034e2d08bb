// Places in the text: lines and columns as the server counts them, as the page's own index.

/** Where a line and column (in characters, from 1) lie in the text, as its own index. */
export function indexOf(text, line, column = 1) {
  let at = 0;
  for (let number = 1; number < line; number++) {
    const end = text.indexOf("\n", at);
    if (end < 0) return text.length;
    at = end + 1;
  }
  const stop = text.indexOf("\n", at);
  const own = [...text.slice(at, stop < 0 ? undefined : stop)];
  return at + own.slice(0, column - 1).join("").length;
}

/** The number of the line an index lies in, from 1. */
export function lineAt(text, index) {
  return text.slice(0, index).split("\n").length;
}
