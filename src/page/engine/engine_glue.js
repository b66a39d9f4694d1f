// Joined to what the compiler writes: one function for the worker (worker.ts).
Module["ask"] = function (question, progress) {
  Module["onProgress"] = progress;
  return Module["ccall"]("gentlest_ask", "string", ["string"], [question]);
};
