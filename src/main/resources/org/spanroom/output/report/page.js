"use strict";
document.body.dataset.ready = "true";
