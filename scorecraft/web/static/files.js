// Opening and saving: never over a file that changed meanwhile without asking.

import { ask, tellWhy } from "./api.js";
import { prompted, question } from "./dialog.js";
import { tell } from "./dom.js";
import { store } from "./store.js";
import { words } from "./words.js";

const told = words.saving;

/** Open a pattern of the shelf or the folder, unless unsaved work should stay; tell whether. */
export async function open(place, name) {
  if (!(await mayLeave())) return false;
  const file = await ask("/api/open", { place, name });
  store.open({ ...file, place });
  return true;
}

/** Start with an empty loaf. */
export async function fresh() {
  if (!(await mayLeave())) return false;
  store.open({ name: "", text: words.freshText, mark: null, place: "" });
  store.saved = "";
  return true;
}

async function mayLeave() {
  if (!store.text || !store.unsaved) return true;
  const answer = await question(words.shelf.title, words.shelf.leave(store.name), { yes: words.shelf.leaveYes, no: words.shelf.leaveNo });
  return answer === "yes";
}

/** Save where it belongs; ask for a name where it has none of its own. */
export async function save() {
  if (store.place !== "folder" || !store.name) return saveAs();
  return write(store.name, store.mark);
}

/** Save under a name that is asked for. */
export async function saveAs() {
  const name = await prompted(told.title, told.name, told.hint, (store.name || "my-loaf").replace(/\.score$/, ""), told.button);
  if (name === null) return false;
  return write(name, null);
}

async function write(name, mark) {
  const text = store.text;
  try {
    const file = await ask("/api/save", { name, text, mark });
    store.wrote({ ...file, text });
    tell(words.saved(file.name));
    return true;
  } catch (error) {
    if (error.status === 409) return changed(name, error);
    tellWhy(error);
    return false;
  }
}

async function changed(name, error) {
  const answers = { another: told.another, over: told.over, theirs: told.theirs };
  const answer = await question(told.changedTitle, error.message, answers);
  if (answer === "over") return write(name, error.data.mark);
  if (answer === "another") return saveAs();
  if (answer === "theirs") store.open({ ...(await ask("/api/open", { name })), place: "folder" });
  return false;
}
