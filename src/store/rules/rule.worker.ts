import { createRuleWorker, type RuleJob, type RuleWork } from '../../solving/rule/ruleJobs';
import { serveWorker } from '../solver/workerClient';

// Tries rules beside the screen, a block of swings at a time.
const work = createRuleWorker();
serveWorker<RuleJob, RuleWork>((job, say) => {
  for (const answer of work(job)) say(answer);
});
