// Whether what the server has told is about the text as it is.

import { store } from "../store.js";

export function isKnown(answer) {
  return answer !== null && answer.asked === store.stamp;
}
