using System.CommandLine;
using System.Globalization;
using Spectre.Console;
using SwingStudy.App.Studies;
using SwingStudy.App.Terminal;
using SwingStudy.Domain.Declarations;
using SwingStudy.Domain.Variables;
using SwingStudy.Pipeline.Planning;
using SwingStudy.Reporting.Figures;
using SwingStudy.Storage.Tables;

namespace SwingStudy.App.Commands;

/// <summary><c>protocol plan</c>: sessions, swings and players needed, by simulated studies.</summary>
internal static class ProtocolPlanCommand
{
    private const int LongestLine = 40;

    public static Command Create(CommandRunner runner)
    {
        var file = new Argument<string?>("file") { Description = "A protocol file, or the name of a shipped one (default: the study's).", Arity = ArgumentArity.ZeroOrOne };
        var options = new PlanOptions();
        var command = new Command("plan", "Sessions, swings and players needed, by simulation from the study's own scatter or the scatter that is declared.") { file };
        options.AddTo(command);
        runner.Bind(command, (parsed, context) =>
        {
            if (parsed.GetValue(file) is null && LockedProtocol.EditedIn(context.Folder, context.Time) is { } edited)
                return CommandResult.Failed(ExitCode.Refused, [edited]);
            if (!DeclarationPlaces.ProtocolFile(context.Folder, parsed.GetValue(file)).Succeeded(out var path, out var problems)
                || !DeclarationPlaces.Dictionary(context.Folder, null).Succeeded(out var dictionary, out problems)
                || !ProtocolReader.Read(path, dictionary).Succeeded(out var protocol, out problems))
                return CommandResult.Failed(ExitCode.InvalidInput, problems);
            var tables = File.Exists(context.Folder.StudyFile) ? new TableStore(context.Folder, context.Time) : null;
            if (!options.Request(parsed, protocol, dictionary, tables).Succeeded(out var request, out problems))
                return CommandResult.Failed(ExitCode.InvalidInput, problems);
            return Result(request, dictionary[options.OutcomeOf(parsed, protocol)!.Variable], parsed.GetValue(options.Figure));
        });
        return command;
    }

    private static CommandResult Result(PlanRequest request, Variable variable, string? figure)
    {
        var plan = StudyPlan.Of(request);
        if (figure is not null)
            Write(figure, Drawn(request, plan, variable));
        return CommandResult.Done(
            new
            {
                protocol = request.Protocol.Name, outcome = variable.Name, unit = variable.Unit, request.Change,
                noise = new { request.Noise.Session, request.Noise.Swing, request.Noise.Source, request.Noise.IsOwn, request.ChangeBetweenPlayers },
                request.Players, wanted_power = request.Power, request.Replications, confidence = request.Protocol.Analysis.Confidence,
                planned = new { sessions = plan.PlannedSessions, swings = plan.PlannedSwings },
                least_sessions = plan.LeastSessions, swings_cannot_help = plan.SwingsCannotHelp, enough_for_player = plan.EnoughForPlayer, enough_for_draw = plan.EnoughForDraw, sizes = plan.Rows, by_players = plan.Players, figure,
            },
            console => Write(console, request, plan, new ValueDisplay(variable), figure));
    }

    private static void Write(IAnsiConsole console, PlanRequest request, StudyPlan plan, ValueDisplay display, string? figure)
    {
        console.MarkupLineInterpolated($"[bold]{display.Title}[/]: a change of {Text(display, request.Change)} is to be found; {request.Players} {(request.Players == 1 ? "player" : "players")}, {request.Protocol.Analysis.Confidence:P0} confidence.");
        console.MarkupLineInterpolated($"Scatter: {Text(display, request.Noise.Session)} from session to session, {Text(display, request.Noise.Swing)} from swing to swing. {request.Noise.Source}");
        Listing.Write(console, ["sessions a phase", "swings", "detectable change", "with endless swings", "power, one player", "power, randomization test", "smallest p"], plan.Rows.Select(row => (IReadOnlyList<string>)
        [
            Number(row.Sessions), Number(row.Swings), $"{Text(display, row.Detectable)}{(row.Detectable <= Math.Abs(request.Change) ? " *" : "")}", Text(display, row.Floor), Share(row.PlayerPower), Share(row.DrawPower),
            row.SmallestPossibleP?.ToString("0.####", CultureInfo.InvariantCulture) ?? "not drawn",
        ]), "No sizes.");
        console.WriteLine("* a change of that size can be told from noise.");
        foreach (var sentence in Conclusions(request, plan, display))
            console.MarkupLineInterpolated($"{sentence}");
        console.MarkupLineInterpolated($"Mean change over players, {plan.PlannedSessions} sessions a phase and {plan.PlannedSwings} swings: {string.Join(", ", plan.Players.Where(row => row.Players is 2 or 3 or 4 or 6 or 8 or 12).Select(row => $"{row.Players} players {Share(row.Power)}"))}.");
        if (figure is not null)
            console.MarkupLineInterpolated($"Figure: {figure}");
    }

    private static IEnumerable<string> Conclusions(PlanRequest request, StudyPlan plan, ValueDisplay display)
    {
        if (plan.SwingsCannotHelp)
        {
            var floor = StudyPlan.Detectable(request with { Noise = request.Noise with { Swing = 0 } }, plan.PlannedSessions, 1);
            yield return $"More swings in one day cannot beat session noise: {plan.PlannedSessions} sessions a phase leave {Text(display, floor)} however many swings are made; {plan.LeastSessions} sessions are the least.";
        }

        yield return $"One player, t test of session means: {Enough(plan.EnoughForPlayer, request, "more sessions, or a larger change")}";
        if (plan.Rows.Any(row => row.SmallestPossibleP > 1 - request.Protocol.Analysis.Confidence + 1e-12))
            yield return "Randomization test: the draw chooses among too few assignments for any data to be significant; widen it.";
        else if (plan.Rows.Any(row => row.DrawPower is not null))
            yield return $"Randomization test of the draw: {Enough(plan.EnoughForDraw, request, "a wider draw, more players or more sessions")}";
    }

    private static string Enough(PlanRow? row, PlanRequest request, string otherwise) => row is null
        ? FormattableString.Invariant($"none of these sizes reaches a power of {request.Power:0.##}; {otherwise}.")
        : FormattableString.Invariant($"{row.Sessions} sessions a phase with {row.Swings} swings reach a power of {request.Power:0.##}.");

    private static Figure Drawn(PlanRequest request, StudyPlan plan, Variable variable) => PlanFigure.Draw(
        variable,
        Math.Abs(request.Change),
        [
            .. request.Sessions.Append(plan.PlannedSessions).Distinct().Order().Select(sessions => new PlanLine(
                sessions, [.. Enumerable.Range(1, LongestLine).Select(swings => (swings, StudyPlan.Detectable(request, sessions, swings)))])),
        ],
        (plan.PlannedSessions, plan.PlannedSwings, StudyPlan.Detectable(request, plan.PlannedSessions, plan.PlannedSwings)));

    private static void Write(string file, Figure figure)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(file))!);
        if (file.EndsWith(".svg", StringComparison.OrdinalIgnoreCase))
            File.WriteAllText(file, figure.Svg);
        else
            File.WriteAllBytes(file, figure.Png);
    }

    private static string Text(ValueDisplay display, double amount) =>
        ValueDisplay.WithUnit(ValueDisplay.Number(display.Difference(amount), Math.Max(2, display.Decimals)), display.Symbol);

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Share(double? power) => power?.ToString("0.00", CultureInfo.InvariantCulture) ?? "";
}
