// Opening and saving: never over a file that changed meanwhile without asking.

import { ask, tellWhy } from "./api.js";
import { isAsking, prompted, question } from "./dialog.js";
import { edits } from "./edits.js";
import { hush, tell } from "./messages.js";
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
  store.open({ name: "", text: words.freshText, mark: null, place: "", saved: "" });
  return true;
}

async function mayLeave() {
  if (!store.text || !store.unsaved) return true;
  const answer = await question(words.shelf.title, words.shelf.leave(store.name), { yes: words.shelf.leaveYes, no: words.shelf.leaveNo });
  return answer === "yes";
}

/** Save where it belongs; ask for a name where it has none of its own. */
export async function save() {
  if (isAsking()) return;
  if (!store.text) return tell(told.nothing);
  if (store.place !== "folder" || !store.name) return saveAs();
  await edits.settled();
  try {
    await write(store.name, store.mark);
  } catch (error) {
    if (error.status === 409) return changed(store.name, error);
    tellWhy(error, "save");
  }
}

/** Save under a name that is asked for until it will do. */
export async function saveAs() {
  if (isAsking()) return;
  if (!store.text) return tell(told.nothing);
  await edits.settled();
  const value = (store.name || "my-loaf").replace(/\.score$/, "");
  let there = null;
  const tried = async (name) => {
    try {
      await write(name, null);
    } catch (error) {
      if (error.status === 409) there = { name, error };
      else return error.status ? `${error.message}: ${error.hint}` : words.lost;
    }
    return "";
  };
  await prompted({ title: told.title, label: told.name, hint: told.hint, value, yes: told.button }, tried);
  if (there) await changed(there.name, there.error);
}

async function write(name, mark) {
  const text = store.text;
  const file = await ask("/api/save", { name, text, mark });
  store.wrote({ ...file, text });
  hush("save");
  tell(words.saved(file.name));
}

/** Another file is there by that name: nothing is lost whichever way it goes. */
async function changed(name, error) {
  const answers = { another: told.another, over: told.over, theirs: told.theirs };
  const answer = await question(told.changedTitle, error.message, answers);
  try {
    if (answer === "over") await write(name, error.data.mark);
    else if (answer === "another") await saveAs();
    else if (answer === "theirs") await theirs(name);
  } catch (again) {
    if (again.status === 409) return changed(name, again);
    tellWhy(again, "save");
  }
}

/** Open what is in the file; the text that was here is a step of undo away. */
async function theirs(name) {
  const file = await ask("/api/open", { name });
  if (file.name !== store.name) return store.open({ ...file, place: "folder" });
  store.giveWay(file);
  tell(told.gaveWay);
}
