/** Every place round the yard: see places.js. */
import './lap-beds.js';
import './lap-catalogue.js';
import './lap-days.js';
import './lap-ground.js';
import './lap-load-in.js';
import './lap-paths.js';
import './lap-pegs.js';
import './lap-quote.js';
import './lap-rack.js';
import './lap-revisions.js';
import './lap-rolls.js';
import './lap-saw-day.js';
import './lap-sheets.js';
import './lap-slip.js';
import './lap-snags.js';
import './lap-tally.js';
import './lap-try-out.js';
