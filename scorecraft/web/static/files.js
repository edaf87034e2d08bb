// Opening and saving: never over a file that changed meanwhile without asking.

import { ask, Lost, tellWhy } from "./api.js";
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
  store.open({ name: "", text: words.freshText, mark: null, place: "" });
  return true;
}

async function mayLeave() {
  if (!store.text || !store.unsaved) return true;
  const answer = await question(words.shelf.leaveTitle, words.shelf.leave(store.name), { yes: words.shelf.leaveYes, no: words.shelf.leaveNo });
  return answer === "yes";
}

let saving = false;

/** Save where it belongs; ask for a name where it has none of its own. */
export function save() {
  return alone(() => (store.place === "folder" && store.name ? overwrite() : askName()));
}

/** Save under a name that is asked for. */
export function saveAs() {
  return alone(askName);
}

/** One saving at a time, of all that was changed, if anything is open. */
async function alone(act) {
  if (saving || isAsking()) return;
  if (!store.text) return tell(told.nothing);
  saving = true;
  try {
    await edits.settled();
    await act();
  } finally {
    saving = false;
  }
}

async function overwrite() {
  try {
    await write(store.name, store.mark);
  } catch (error) {
    if (error.status === 409) await changed(store.name, error);
    else tellWhy(error, "save");
  }
}

/** Ask for a name until it will do. */
async function askName() {
  const value = (store.name || "my-loaf").replace(/\.score$/, "");
  let there = null;
  const tried = async (name) => {
    try {
      await write(name, null);
    } catch (error) {
      if (error.status === 409) there = { name, error };
      else return said(error);
    }
    return "";
  };
  await prompted({ title: told.title, label: told.name, hint: told.hint, value, yes: told.button }, tried);
  if (there) await changed(there.name, there.error);
}

/** Say at a field why a name will not do. */
export function said(error) {
  if (error instanceof Lost) return words.lost;
  if (!error.status) throw error;
  return [error.message, error.hint].filter(Boolean).join(": ");
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
    else if (answer === "another") await askName();
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
