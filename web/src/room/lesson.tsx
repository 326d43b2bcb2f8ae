// Beginning and ending a lesson.

import { useState } from "preact/hooks";
import { textOf } from "../text_of";
import { speaking } from "../words";
import { roomWords as words } from "../words/room_topic";
import type { Lesson, Room } from "./contract";
import { useTelling } from "./telling";

/** The room takes a body of 16 KiB; a plan has hundreds of letters. */
const LONGEST_PLAN = 12_000;

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
  const [plan, choose] = useState<string | null>(null);
  const [wrong, say] = useState("");
  const pick = async (input: HTMLInputElement) => {
    const file = input.files?.[0];
    const text = !file ? null : file.size > LONGEST_PLAN ? undefined : await textOf(file).catch(() => undefined);
    say(text === undefined ? words().noPlan : "");
    choose(text ?? null);
    if (text === undefined) input.value = "";
  };
  const submit = (event: Event) => {
    event.preventDefault();
    void send("/api/room/lessons", { label: label.trim(), ...(plan === null ? {} : { plan_toml: plan }) });
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
        <label>
          {words().planFile}
          <input type="file" accept=".toml,text/plain" onChange={(event) => void pick(event.currentTarget)} />
        </label>
        <p class="remark">{words().beginWhy}</p>
        <button type="submit" class="strong" disabled={busy}>
          {words().begin}
        </button>
      </form>
      {room.lesson && !room.lesson.ended && (
        <button type="button" class="plain" onClick={() => void send("/api/room/lessons/end", {})}>
          {words().end}
        </button>
      )}
      <p class="told" role="status">
        {wrong || told}
      </p>
    </section>
  );
}
