// The help as the server sets it, fetched once; when nobody answered it is fetched again.

import { fetched } from "./api.js";

let help = null;

/** The help as a document of its own. */
export function helped() {
  help ||= fetched("/api/help").then(
    ({ html }) => new DOMParser().parseFromString(html, "text/html"),
    (error) => {
      help = null;
      throw error;
    },
  );
  return help;
}

/** What a term of the help is called and what it means, or null. */
export async function termOf(name) {
  const found = (await helped()).querySelector(`.glossary #help-${name}`);
  return found && [...found.children].map((each) => each.textContent);
}
