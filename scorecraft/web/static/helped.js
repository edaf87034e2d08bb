// The help as the server tells it, fetched once; when nobody answered it is fetched again.

import { fetched } from "./api.js";

let help = null;

/** Its parts: lessons and groups of terms. */
export function helped() {
  help ||= fetched("/api/help").catch((error) => {
    help = null;
    throw error;
  });
  return help;
}

/** A term of the glossary by its name, or undefined. */
export async function termOf(name) {
  const { parts } = await helped();
  return parts.find((each) => each.name === "glossary").groups.flatMap(({ terms }) => terms).find((term) => term.name === name);
}
