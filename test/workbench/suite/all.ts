// Every test of the editor, in one list: the Node host and the web host run the same.
import './activation.test.ts';
import './problems.test.ts';
import './calm.test.ts';
import './help.test.ts';
import './language.test.ts';
import './commands.test.ts';
import './logging.test.ts';
import './nothingLost.test.ts';
import './changes.test.ts';
import './files.test.ts';
import './plan.test.ts';
import './plain.test.ts';
import './elsewhere.test.ts';
