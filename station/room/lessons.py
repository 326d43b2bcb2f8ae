"""Which practicals are of which lesson. A practical is named by its bench, its journal and its first event."""

from dataclasses import dataclass

from station.room.database import Database, now


@dataclass(frozen=True)
class Lesson:
    """One lesson: the class's label, and when it began and ended (wall time: labels only)."""

    lesson: int
    label: str
    began: str
    ended: str | None


class LessonsKept(Database):
    """The lessons of the room."""

    def begin_lesson(self, label: str) -> int:
        """Begin a lesson of the class with this label, ending the one before; return its number."""
        with self._writing() as write:
            write.execute("UPDATE lessons SET ended = ? WHERE ended IS NULL", (now(),))
            lesson = write.execute("INSERT INTO lessons (label, began) VALUES (?, ?)", (label, now())).lastrowid
        return int(lesson or 0)

    def end_lesson(self) -> None:
        """End the lesson that is under way, if one is."""
        with self._writing() as write:
            write.execute("UPDATE lessons SET ended = ? WHERE ended IS NULL", (now(),))

    def lessons(self) -> list[Lesson]:
        """Return all lessons, the newest first."""
        return [Lesson(*row) for row in self._rows("SELECT lesson,label,began,ended FROM lessons ORDER BY lesson DESC")]

    def add_practical(self, lesson: int, bench: str, journal: str, seq: int) -> None:
        """Say that the practical that began with this event (`plan_chosen`) is of this lesson; the first word holds."""
        with self._writing() as write:
            write.execute("INSERT OR IGNORE INTO practicals VALUES (?,?,?,?)", (lesson, bench, journal, seq))

    def practicals(self, lesson: int) -> list[tuple[str, str, int]]:
        """Return bench, journal and first event of each practical of a lesson."""
        sql = "SELECT bench,journal,seq FROM practicals WHERE lesson = ? ORDER BY bench,journal,seq"
        return [(bench, journal, seq) for bench, journal, seq in self._rows(sql, (lesson,))]
