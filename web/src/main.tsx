import { render } from "preact";

const root = document.getElementById("page");
if (root) render(<h1>Bench station</h1>, root);
