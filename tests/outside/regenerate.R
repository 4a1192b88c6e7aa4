# Works out the expected values of tests/outside/statistics-reference.json anew, by R and its libraries:
#   Rscript tests/outside/regenerate.R tests/outside/statistics-reference.json
# Needs R with jsonlite, psych and vcd (Debian: r-base-core r-cran-jsonlite r-cran-psych r-cran-vcd). The tests
# themselves need no R: the values are committed, with the versions that gave them.
suppressMessages({library(jsonlite); library(psych); library(vcd)})
set.seed(20260301)
numbers <- function(n, mean, sd) round(rnorm(n, mean, sd), 3)

quantiles <- function() {
  p <- c(1e-12, 1e-6, 0.001, 0.025, 0.2, 0.6, 0.975, 0.999)
  t <- expand.grid(p = p, df = c(1, 2.5, 9, 60, 1200))
  t$value <- qt(t$p, t$df)
  # Near zero R forms F from one less a beta quantile and loses its digits: mpmath gives those anchors.
  f <- expand.grid(p = p[p >= 0.2], df1 = c(1, 5, 16.4), df2 = c(2, 11, 240.7))
  f$value <- qf(f$p, f$df1, f$df2)
  chi <- expand.grid(p = p, df = c(0.7, 1, 4, 33, 900))
  chi$value <- qchisq(chi$p, chi$df)
  list(t = t, f = f, chiSquare = chi)
}

# The six forms with their intervals by psych, the analysis of variance by R itself.
intraclass <- function(n, k, ofSubjects, ofRaters, error) {
  table <- round(outer(rnorm(n, 20, ofSubjects), rnorm(k, 0, ofRaters), `+`) + rnorm(n * k, 0, error), 3)
  icc <- suppressWarnings(ICC(table, lmer = FALSE))$results
  long <- data.frame(y = c(table), s = factor(row(table)), r = factor(col(table)))
  ms <- anova(lm(y ~ s + r, long))[["Mean Sq"]]
  list(table = table, value = icc$ICC, lower = icc[["lower bound"]], upper = icc[["upper bound"]],
       f = icc$F, df1 = icc$df1, df2 = icc$df2,
       subjects = ms[1], raters = ms[2], residual = ms[3],
       semAgreement = sqrt(max(0, (ms[2] - ms[3]) / n) + ms[3]), semConsistency = sqrt(ms[3]))
}

# Values and standard errors by vcd: those that psych gives for weights are wrong with three and more categories.
kappas <- function(cells, c) {
  table <- matrix(cells, c, byrow = TRUE)
  linear <- vcd::Kappa(table)
  quadratic <- vcd::Kappa(table, weights = "Fleiss-Cohen")
  of <- function(x) list(value = unname(x[1]), standardError = unname(x[2]))
  list(table = table, plain = of(linear$Unweighted), linear = of(linear$Weighted), quadratic = of(quadratic$Weighted))
}

agreement <- function(n) {
  a <- numbers(n, 30, 6); b <- round(a + rnorm(n, 0.4, 1.2), 3)
  d <- a - b; s <- sd(d); z <- qnorm(.975); m <- (a + b) / 2
  exact <- qt(c(.025, .975), n - 1, z * sqrt(n)) / sqrt(n) * s
  line <- summary(lm(d ~ m))$coefficients
  list(first = a, second = b, bias = mean(d), sd = s, lower = mean(d) - z * s, upper = mean(d) + z * s,
       biasInterval = c(t.test(d)$conf.int), upperExact = mean(d) + exact, lowerExact = mean(d) - rev(exact),
       slope = line[2, 1], slopeError = line[2, 2], p = line[2, 4])
}

trend <- function(n, digits) {
  t <- sort(sample(1:200, n)); y <- round(20 - 0.02 * t + rnorm(n), digits)
  tied <- any(duplicated(y))
  fit <- lm(y ~ t); k <- cor.test(t, y, method = "kendall", exact = !tied && n <= 20, continuity = TRUE)
  slopes <- sort(unlist(lapply(1:(n - 1), function(i) (y[(i + 1):n] - y[i]) / (t[(i + 1):n] - t[i]))))
  list(times = t, values = y, slope = unname(coef(fit)[2]), intercept = unname(coef(fit)[1]),
       interval = unname(confint(fit)[2, ]), p = summary(fit)$coefficients[2, 4], residualSd = sigma(fit),
       kendallP = k$p.value, theilSen = median(slopes), joint = median(y - median(slopes) * t))
}

shapiro <- function(values) { s <- shapiro.test(values); list(values = values, w = unname(s$statistic), p = s$p.value) }

# Exact two-sided factor: the chance over where the mean may lie, by adaptive quadrature instead of our fixed rule.
twoSided <- function(n, P, g) {
  reach <- function(x) uniroot(function(r) pnorm(x + r) - pnorm(x - r) - P, c(0, 60), tol = 1e-15)$root
  held <- function(k) integrate(function(x) sapply(x, function(m)
    pchisq((n - 1) * reach(m)^2 / k^2, n - 1, lower.tail = FALSE) * dnorm(m, 0, 1 / sqrt(n))),
    -8 / sqrt(n), 8 / sqrt(n), rel.tol = 1e-11, subdivisions = 2000)$value
  uniroot(function(k) held(k) - g, c(0.3, 90), tol = 1e-13)$root
}
tolerance <- function() {
  grid <- expand.grid(n = c(3, 10, 43, 120), share = c(.9, .95), confidence = c(.95, .99))
  grid$twoSided <- mapply(twoSided, grid$n, grid$share, grid$confidence)
  grid$oneSided <- mapply(function(n, P, g) qt(g, n - 1, qnorm(P) * sqrt(n)) / sqrt(n), grid$n, grid$share, grid$confidence)
  grid
}

found <- list(
  versions = list(R = paste(R.version$major, R.version$minor, sep = "."),
                  psych = as.character(packageVersion("psych")), vcd = as.character(packageVersion("vcd"))),
  quantiles = quantiles(),
  intraclass = list(intraclass(6, 4, 4, 1, 1.5), intraclass(25, 2, 3, 0.2, 2), intraclass(12, 3, 0.1, 3, 2), intraclass(40, 5, 6, 0, 0.5)),
  kappa = list(kappas(c(22, 2, 2, 0, 5, 7, 14, 0, 0, 2, 36, 0, 0, 1, 17, 10), 4), kappas(c(40, 9, 6, 25), 2),
               kappas(sample(0:20, 36, TRUE), 6)),
  agreement = list(agreement(8), agreement(17), agreement(120)),
  trend = list(trend(6, 3), trend(12, 3), trend(14, 0), trend(60, 2)),
  shapiro = list(shapiro(numbers(3, 5, 1)), shapiro(numbers(4, 5, 1)), shapiro(numbers(5, 5, 1)), shapiro(round(rexp(6), 4)), shapiro(round(rexp(11), 4)),
                 shapiro(round(rexp(12), 4)), shapiro(numbers(50, 100, 15)), shapiro(round(rexp(200), 4))),
  tolerance = tolerance())
write_json(found, commandArgs(TRUE)[1], digits = NA, auto_unbox = TRUE, dataframe = "rows", matrix = "rowmajor")
