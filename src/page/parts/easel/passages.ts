// The passages and layers that may lie under a swab, by the names of the job.
import { computed } from "@preact/signals";
import { job } from "../../job/edit";

export const passages = computed<string[]>(() => {
  const kept = job.value.layers.filter((one) => one.role === "keep");
  return [...new Set([...job.value.passages, ...kept].map((one) => one.name).filter(Boolean))];
});
