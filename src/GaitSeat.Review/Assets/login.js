// Asks for the password of a shared page.
const el = (id) => document.getElementById(id);

el("form").addEventListener("submit", async (event) => {
  event.preventDefault();
  el("state").textContent = "";
  try {
    const response = await fetch("/login", { method: "POST", cache: "no-store", headers: { "Content-Type": "application/json" }, body: JSON.stringify({ password: el("password").value }) });
    if (response.ok) {
      location.reload();
      return;
    }
    el("state").textContent = (await response.json()).text;
    el("password").select();
  } catch {
    el("state").textContent = "The program does not answer; was it stopped?";
  }
});
