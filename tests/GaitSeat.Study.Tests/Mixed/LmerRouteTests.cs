using System.Diagnostics;
using System.Globalization;
using GaitSeat.Study.Mixed;

namespace GaitSeat.Study.Tests.Mixed;

/// <summary>R's lme4 on the same unbalanced rows, where it is installed (Debian: r-cran-lme4). A checker only.</summary>
public sealed class LmerRouteTests
{
    private const string Script = """
        suppressMessages(library(lme4))
        d <- read.csv(file("stdin"), header = FALSE, col.names = c("y", "x", "r", "h", "w"))
        control <- lmerControl(optimizer = "bobyqa", optCtrl = list(rhoend = 1e-9, maxfun = 1e5), calc.derivs = FALSE)
        m <- lmer(y ~ x + (1 + x | r) + (1 | h), d, weights = w, REML = REML_OR_ML, control = control)
        v <- as.data.frame(VarCorr(m))
        pick <- function(g, a, b = NA) v$sdcor[v$grp == g & v$var1 %in% a & v$var2 %in% b]
        crit <- if (isREML(m)) REMLcrit(m) else -2 * c(logLik(m))
        cat(format(c(fixef(m), sqrt(diag(as.matrix(vcov(m)))), pick("r", "(Intercept)"), pick("r", "x"), pick("r", "(Intercept)", "x"), pick("h", "(Intercept)"), sigma(m), crit), digits = 15))
        """;

    [Theory]
    [InlineData(MixedCriterion.Ml, false, true)]
    [InlineData(MixedCriterion.Reml, true, true)]
    [InlineData(MixedCriterion.Reml, false, false)]
    public async Task Lme4_FindsTheSameModel(MixedCriterion criterion, bool nested, bool weights)
    {
        var data = MadeRows.Of(8, nested, weights);
        var theirs = await RunAsync(Script.Replace("REML_OR_ML", criterion == MixedCriterion.Reml ? "TRUE" : "FALSE", StringComparison.Ordinal), Rows(data));
        var fit = MixedModel.Fit(data, new() { Criterion = criterion });
        var (rider, horse) = (fit.Random[0], fit.Random[1]);
        double[] ours =
        [
            fit.Fixed[0].Estimate, fit.Fixed[1].Estimate, fit.Fixed[0].StandardError, fit.Fixed[1].StandardError,
            rider.StandardDeviations[0], rider.StandardDeviations[1], rider.Correlations[0, 1], horse.StandardDeviations[0], fit.ResidualSd, fit.CriterionValue,
        ];
        Assert.Equal(theirs.Length, ours.Length);
        Assert.All(ours, (o, i) => Assert.Equal(theirs[i], o, 1e-4 * Math.Max(0.1, Math.Abs(theirs[i]))));
        Assert.Equal(theirs[^1], fit.CriterionValue, 1e-6);
    }

    /// <summary>Riders, crossed horses and sessions within riders, unbalanced; and the profile interval of the slope, which lme4 finds by a spline through the profile.</summary>
    [Fact]
    public async Task Lme4_FindsTheSameProfileAndSessions()
    {
        const string Sessions = """
            suppressMessages(library(lme4))
            d <- read.csv(file("stdin"), header = FALSE, col.names = c("y", "x", "r", "h", "s"))
            control <- lmerControl(optimizer = "bobyqa", optCtrl = list(rhoend = 1e-9, maxfun = 1e5), calc.derivs = FALSE)
            m <- lmer(y ~ x + (1 + x | r) + (1 | h) + (1 | s), d, REML = FALSE, control = control)
            v <- as.data.frame(VarCorr(m))
            ci <- suppressMessages(confint(m, parm = "x", method = "profile"))
            cat(format(c(fixef(m), v$sdcor[v$grp == "h"], v$sdcor[v$grp == "s"], sigma(m), -2 * c(logLik(m)), ci), digits = 15))
            """;
        var data = MadeRows.WithSessions(9);
        var theirs = await RunAsync(Sessions, string.Join('\n', data.Outcome.Select((y, i) => string.Create(
            CultureInfo.InvariantCulture,
            $"{y:R},{data.Fixed[1].Values[i]:R},r{data.Random[0].Groups.LevelOf[i]},h{data.Random[1].Groups.LevelOf[i]},s{data.Random[2].Groups.LevelOf[i]}"))) + "\n");
        var fit = MixedModel.Fit(data, new() { Criterion = MixedCriterion.Ml });
        var profile = ProfileInterval.Of(fit, Contrast.Of(data.Fixed, data.Fixed[1].Name));
        double[] ours = [fit.Fixed[0].Estimate, fit.Fixed[1].Estimate, fit.Random[1].StandardDeviations[0], fit.Random[2].StandardDeviations[0], fit.ResidualSd, fit.CriterionValue, profile.Low, profile.High];
        Assert.Equal(theirs.Length, ours.Length);
        Assert.All(ours[..6], (o, i) => Assert.Equal(theirs[i], o, 1e-4 * Math.Max(0.1, Math.Abs(theirs[i]))));
        // A thousandth of the interval's width: the spline's own accuracy.
        Assert.All(ours[6..], (o, i) => Assert.Equal(theirs[6 + i], o, 1e-3 * (profile.High - profile.Low)));
    }

    private static string Rows(MixedData data) => string.Join('\n', data.Outcome.Select((y, i) => string.Create(
        CultureInfo.InvariantCulture,
        $"{y:R},{data.Fixed[1].Values[i]:R},r{data.Random[0].Groups.LevelOf[i]},h{data.Random[1].Groups.LevelOf[i]},{data.Weights?[i] ?? 1:R}"))) + "\n";

    private static async Task<double[]> RunAsync(string script, string rows)
    {
        var r = Start("Rscript", ["-e", script]);
        if (r is null) Assert.Skip("R is not installed (Debian: r-base-core and r-cran-lme4).");
        using (r)
        {
            var errors = r.StandardError.ReadToEndAsync();
            var output = r.StandardOutput.ReadToEndAsync();
            await FeedAsync(r, rows);
            await r.WaitForExitAsync(TestContext.Current.CancellationToken);
            if ((await errors).Contains("no package called", StringComparison.Ordinal)) Assert.Skip("R is installed without lme4 (Debian: r-cran-lme4).");
            Assert.True(r.ExitCode == 0, await errors);
            return [.. (await output).Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(v => double.Parse(v, CultureInfo.InvariantCulture))];
        }
    }

    /// <summary>R that stops at once reads nothing; its message says why.</summary>
    private static async Task FeedAsync(Process r, string rows)
    {
        try
        {
            await r.StandardInput.WriteAsync(rows);
            r.StandardInput.Close();
        }
        catch (IOException)
        {
        }
    }

    private static Process? Start(string program, string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        try
        {
            return Process.Start(start);
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
    }
}
