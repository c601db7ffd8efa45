
'use strict';
(function () {
  var begin = null;
  var button = document.getElementById('begin');
  var spoken = document.getElementById('spoken');
  var marks = Array.prototype.slice.call(document.querySelectorAll('[data-minute]'));
  function show() {
    if (begin === null) { return; }
    var gone = (Date.now() - begin) / 60000;
    var due = [];
    marks.forEach(function (mark) {
      var left = Math.round(Number(mark.getAttribute('data-minute')) - gone);
      var place = mark.querySelector('.left');
      if (!place) { return; }
      var done = mark.querySelector('input');
      if (done && done.checked) { place.textContent = ''; return; }
      place.textContent = left > 0 ? 'in ' + left + ' min' : left < 0 ? -left + ' min ago' : 'now';
      if (left === 0) { due.push(mark.getAttribute('data-what')); }
    });
    var text = due.length ? due.join('; ') + ': now' : '';
    if (spoken.textContent !== text) { spoken.textContent = text; }
  }
  if (button) {
    button.hidden = false;
    button.addEventListener('click', function () {
      begin = Date.now();
      button.textContent = 'First brush now (counting; press to count anew)';
      spoken.textContent = '';
      show();
    });
    setInterval(show, 5000);
  }
}());
