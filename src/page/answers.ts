// The types of the engine's answers, written from docs/schema by the build, under the names used here.
export type * from "answers/ladder";
export type { Act, AfterwardsAnswer, Judged } from "answers/afterwards";
export type { ExplanationAnswer } from "answers/explanation";
export type { ExplanationOfNextAnswer } from "answers/explanation_of_next";
export type { WaysAnswer } from "answers/ways";
export type { CardsAnswer } from "answers/cards";
export type { ExaminationAnswer } from "answers/examination";
export type { NamesRow, NextRow, ReadingsRow, RecordedRow, SolventsRow } from "answers/rows";
