"use strict";
(() => {
  const plain = text => text.normalize("NFD").replace(/[\u0300-\u036f]/g, "").toLowerCase();
  const box = document.getElementById("find"), count = document.getElementById("count");
  const cards = [...document.querySelectorAll("[data-words]")].map(card => [card, plain(card.dataset.words)]);
  const groups = [...document.querySelectorAll(".group")];
  const look = () => {
    const wanted = plain(box.value).split(/\s+/).filter(Boolean);
    let found = 0;
    for (const [card, words] of cards) {
      const fits = wanted.every(word => words.includes(word));
      card.hidden = !fits;
      found += fits ? 1 : 0;
    }
    for (const group of groups) group.hidden = !group.querySelector("[data-words]:not([hidden])");
    count.textContent = (found === 1 ? count.dataset.one : count.dataset.many).replace("{count}", found);
  };
  box.closest("[hidden]").hidden = false;
  box.addEventListener("input", look);
  look();
})();
