// The words in the language that was chosen, at first the browser's.
import { computed, signal } from "@preact/signals";
import { de } from "./de";
import { en, type Words } from "./en";

export const languages: Record<string, { name: string; words: Words }> = {
  en: { name: "English", words: en },
  de: { name: "Deutsch", words: de },
};

const wanted = navigator.language.slice(0, 2);
export const language = signal(wanted in languages ? wanted : "en");
export const words = computed<Words>(() => languages[language.value]?.words ?? en);
