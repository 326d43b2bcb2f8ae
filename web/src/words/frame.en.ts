// What all pages of staff share.

export const frame = {
  ways: "Pages",
  pages: {
    "/": "Bench",
    "/plan": "Plan a practical",
    "/prepare": "Prepare",
    "/checks": "Probe checks",
    "/kit": "This kit",
    "/room": "Room",
    "/room/class": "Class result",
    "/room/lessons": "Lessons",
  },
  asking: "Asking the station …",
  staffOnly: "For staff",
  whyStaff: "Teacher or technician: sign in to go on.",
};
