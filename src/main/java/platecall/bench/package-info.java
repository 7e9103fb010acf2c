/** Solves published project-scheduling and job-shop files for makespan and stands the result beside the best known. */
package platecall.bench;
