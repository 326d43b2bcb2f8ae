// Beginning and ending a lesson.

import { useState } from "preact/hooks";
import { speaking } from "../words";
import { roomWords as words } from "../words/room_topic";
import type { Lesson, Room } from "./contract";
import { OWN, PlanChoice, usePlanChoice } from "./plan_choice";
import { useTelling } from "./telling";

export function moment(iso: string): string {
  const at = new Date(iso);
  if (Number.isNaN(at.getTime())) return "";
  const tag = speaking().language === "de" ? "de" : "en-GB";
  return new Intl.DateTimeFormat(tag, { dateStyle: "medium", timeStyle: "short" }).format(at);
}

export function lessonInWords(lesson: Lesson | null): string {
  if (!lesson || lesson.ended) return words().noLesson;
  return words().lesson(lesson.label, moment(lesson.began));
}

export function LessonForm({ room }: { room: Room }) {
  const { told, send, busy } = useTelling();
  const [label, type] = useState(room.lesson?.label ?? "");
  const choice = usePlanChoice(OWN);
  const submit = (event: Event) => {
    event.preventDefault();
    void send("/api/room/lessons", { label: label.trim(), ...choice.chosen });
  };
  return (
    <section class="settings-part">
      <h2>{words().lessonTitle}</h2>
      <p>{lessonInWords(room.lesson)}</p>
      <form onSubmit={submit}>
        <label>
          {words().label}
          <input type="text" maxLength={24} autocomplete="off" value={label} onInput={(event) => type(event.currentTarget.value)} />
        </label>
        <PlanChoice choice={choice} own />
        <p class="remark">{words().beginWhy}</p>
        <button type="submit" class="strong" disabled={busy || (choice.at !== OWN && !choice.given)}>
          {words().begin}
        </button>
      </form>
      {room.lesson && !room.lesson.ended && (
        <button type="button" class="plain" onClick={() => void send("/api/room/lessons/end", {})}>
          {words().end}
        </button>
      )}
      <p class="told" role="status">
        {choice.wrong || told}
      </p>
    </section>
  );
}
