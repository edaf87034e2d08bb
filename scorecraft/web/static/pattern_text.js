// The pattern's text is the one truth: sliders and forms write into it.

const NUMBER = /[+-]?(\d+\.?\d*|\.\d+)(%|[A-Za-z°″]+)?/y;
const MAINS = { loaf: ["shape"], bake: [], bench: [] };
const AFTER = { loaf: ["title", "note"], bake: ["loaf", "title", "note"], bench: ["bake", "loaf", "title", "note"] };

/** Turn a knob: write its value, with its unit, over the one in its line. */
export function withKnob(text, knob, value) {
  const lines = text.split("\n");
  const starts = (line) => line.split(/\s+/, 2).join(" ") === `knob ${knob.name}`;
  const there = lines[knob.span.line - 1];
  const number = there !== undefined && starts(there) ? knob.span.line - 1 : lines.findIndex(starts);
  if (number < 0) return text;
  const line = lines[number];
  const from = [...line].slice(0, knob.span.column - 1).join("").length;
  NUMBER.lastIndex = from;
  const found = NUMBER.exec(line);
  if (!found) return text;
  lines[number] = line.slice(0, from) + value + line.slice(from + found[0].length);
  return lines.join("\n");
}

/** Write a header line (loaf, bake) anew with its keys; a comment behind it stays. */
export function withHeader(text, word, lineNumber, keys) {
  const parts = [word];
  for (const main of MAINS[word]) if (keys[main]) parts.push(keys[main]);
  for (const [key, value] of Object.entries(keys)) {
    if (value && !MAINS[word].includes(key)) parts.push(key, value);
  }
  const lines = text.split("\n");
  if (lineNumber) lines[lineNumber - 1] = parts.join(" ") + comment(lines[lineNumber - 1]);
  else lines.splice(placeFor(lines, word), 0, parts.join(" "));
  return lines.join("\n");
}

function comment(line) {
  const found = /^(?:[^"#]|"(?:[^"\\]|\\.)*")*?(\s*#.*)$/.exec(line);
  return found ? found[1] : "";
}

function placeFor(lines, word) {
  for (const other of AFTER[word]) {
    const at = lines.findLastIndex((line) => line.split(/\s/)[0] === other);
    if (at >= 0) return at + 1;
  }
  return 0;
}

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
