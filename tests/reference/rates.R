# Limits of rates, ratios, standardised rates and agreement, for './test --reference'.
# usage: Rscript rates.R: prints CSV: words of the command after 'lanework evidence', separated by blanks; the place of a
# value in its answer; the value; how close ours must be, relatively.
suppressMessages(library(epitools))
cat("words,place,value,relative\n")
say <- function(words, place, value, relative = 1e-9) cat(sprintf("%s,%s,%.15g,%g\n", words, place, value, relative))
solve_for <- function(f, low, high) uniroot(f, c(low, high), tol = 1e-14, maxiter = 10000)$root

for (x in c(0, 1, 2, 5, 17, 100, 4321)) {
  for (level in c(0.95, 0.9, 0.99)) {
    hours <- 1250
    words <- sprintf("rate --events %d --hours %g --level %g", x, hours, 100 * level)
    limits <- poisson.test(x, hours, conf.level = level)$conf.int * 1000
    say(words, "exact.low", limits[1])
    say(words, "exact.high", limits[2])
    tail <- (1 - level) / 2
    above <- function(m) ppois(x, m, lower.tail = FALSE) + dpois(x, m) / 2 - tail
    below <- function(m) tail - (ppois(x - 1, m) + dpois(x, m) / 2)
    if (x > 0) say(words, "mid_p.low", solve_for(above, 1e-12, x + 1) / hours * 1000, 1e-8)
    say(words, "mid_p.high", solve_for(below, 1e-12, 3 * x + 20) / hours * 1000, 1e-8)
  }
}
for (pair in list(c(41, 28010, 15, 19017), c(2, 17877, 9, 16660), c(0, 500, 4, 400), c(120, 9000, 80, 9100))) {
  words <- sprintf("ratio --events %d --hours %g --other-events %d --other-hours %g", pair[1], pair[2], pair[3], pair[4])
  tested <- poisson.test(pair[c(1, 3)], pair[c(2, 4)])
  if (pair[1] > 0) say(words, "exact.limits.low", tested$conf.int[1])
  say(words, "exact.limits.high", tested$conf.int[2])
  say(words, "no_likelier_p", tested$p.value, 1e-8)
  n <- pair[1] + pair[3]
  share <- pair[2] / (pair[2] + pair[4])
  tails <- c(pbinom(pair[1], n, share) - dbinom(pair[1], n, share) / 2,
             pbinom(pair[1], n, share, lower.tail = FALSE) + dbinom(pair[1], n, share) / 2)
  say(words, "mid_p.p", min(1, 2 * min(tails)))
}
# Deaths by age, made up, and a standard: epitools' own gamma limits.
parts <- read.csv("tests/cli/tables/parts.csv")
standardised <- ageadjust.direct(parts$events, parts$hours, stdpop = parts$standard_hours)
words <- "standardise --data tests/cli/tables/parts.csv"
say(words, "crude_per_1000_h", standardised[["crude.rate"]] * 1000)
say(words, "per_1000_h", standardised[["adj.rate"]] * 1000)
say(words, "limits_per_1000_h.low", standardised[["lci"]] * 1000, 1e-8)
say(words, "limits_per_1000_h.high", standardised[["uci"]] * 1000, 1e-8)

judges <- as.matrix(read.csv("tests/cli/tables/judges.csv")[, -1])
long <- data.frame(score = as.vector(judges), subject = factor(row(judges)), judge = factor(col(judges)))
squares <- anova(lm(score ~ subject + judge, long))[["Mean Sq"]]
k <- ncol(judges)
n <- nrow(judges)
words <- "agree --data tests/cli/tables/judges.csv --scores first_second_third_fourth"
say(words, "correlations.one_agreement.estimate",
    (squares[1] - squares[3]) / (squares[1] + (k - 1) * squares[3] + k * (squares[2] - squares[3]) / n))
say(words, "correlations.one_consistency.estimate", (squares[1] - squares[3]) / (squares[1] + (k - 1) * squares[3]))
say(words, "correlations.mean_consistency.estimate", (squares[1] - squares[3]) / squares[1])
say(words, "consistency.error", sqrt(squares[3]))
