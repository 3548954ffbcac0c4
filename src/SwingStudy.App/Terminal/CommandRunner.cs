using System.CommandLine;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Serilog.Core;
using Spectre.Console;
using SwingStudy.Domain.Studies;

namespace SwingStudy.App.Terminal;

/// <summary>Runs one command line: parses, runs the verb, shows its result, and turns whatever happens into an exit code.</summary>
internal sealed class CommandRunner(TextWriter output, TextWriter error, TimeProvider time)
{
    private static readonly JsonSerializerOptions Json = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        DefaultIgnoreCondition = JsonIgnoreCondition.Never,
        NumberHandling = JsonNumberHandling.Strict,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        WriteIndented = true,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower) },
    };

    /// <summary>Width of a console that wraps no line.</summary>
    public const int Unwrapped = 100_000;

    /// <summary>The study folder; recursive, so that it may stand anywhere on the line.</summary>
    public Option<string> Study { get; } = new("--study")
    {
        Description = "The study folder (default: the folder you stand in).",
        HelpName = "DIR",
        Recursive = true,
    };

    /// <summary>One JSON document on standard output.</summary>
    public Option<bool> AsJson { get; } = new("--json")
    {
        Description = "Print one JSON document to standard output instead of text.",
        Recursive = true,
    };

    /// <summary>Messages of the log on the terminal.</summary>
    public Option<bool> Verbose { get; } = new("--verbose")
    {
        Description = "Show what is logged.",
        Recursive = true,
    };

    /// <summary>Lets a verb run when its command is invoked.</summary>
    public void Bind(Command command, Func<ParseResult, CommandContext, CommandResult> verb) =>
        command.SetAction(parsed => (int)Run(parsed, command, verb));

    /// <summary>Parses and runs <paramref name="arguments"/>.</summary>
    public int Invoke(RootCommand root, string[] arguments)
    {
        var parsed = root.Parse(arguments);
        if (parsed.Errors.Count > 0)
        {
            foreach (var problem in parsed.Errors)
                error.WriteLine(problem.Message);
            error.WriteLine($"See '{CommandPath(parsed)} --help'.");
            return (int)ExitCode.WrongUsage;
        }

        return parsed.Invoke(new InvocationConfiguration { Output = output, Error = error, EnableDefaultExceptionHandler = false });
    }

    private ExitCode Run(ParseResult parsed, Command command, Func<ParseResult, CommandContext, CommandResult> verb)
    {
        var folder = new StudyFolder(Path.GetFullPath(parsed.GetValue(Study) ?? "."));
        var interactive = error == Console.Error && !Console.IsErrorRedirected;
        var messages = ConsoleOn(error, interactive);
        var log = RunLog.Open(folder, command.Name, parsed.GetValue(Verbose), time);
        try
        {
            log.Information("Command {Command} starts", command.Name);
            var result = verb(parsed, new CommandContext(folder, messages, time, log, interactive && messages.Profile.Capabilities.Ansi));
            Show(parsed, result);
            log.Information("Command {Command} ends with exit code {ExitCode}", command.Name, (int)result.Exit);
            return result.Exit;
        }
        catch (OperationCanceledException)
        {
            messages.MarkupLine("Stopped. What was done is stored; run the command again to go on.");
            return ExitCode.Fault;
        }
        catch (Exception fault) when (fault is not OutOfMemoryException)
        {
            // The outermost frame: a fault is logged with everything known of it and told as a fault, never as a result.
            log.Fatal(fault, "Command {Command} failed", command.Name);
            if (FullDisk.Explains(fault, folder))
            {
                messages.MarkupLineInterpolated($"[bold]No space is left on the disk of {folder.Root}:[/] {fault.GetBaseException().Message}");
                messages.WriteLine("Nothing that was stored before is harmed. To mend: free space on that disk, then run the command again; it finishes the work.");
                return ExitCode.Fault;
            }

            messages.MarkupLineInterpolated($"[bold]A fault of the program or the machine:[/] {fault.Message}");
            messages.WriteLine("Nothing that was stored before is harmed; running the command again finishes the work.");
            if (parsed.GetValue(Verbose))
                messages.WriteLine(fault.ToString());
            else
                messages.WriteLine(RunLog.FileOf(folder) is { } file ? $"Details are in {file}." : "Run the command again with --verbose to see the details.");
            return ExitCode.Fault;
        }
        finally
        {
            Close(log, messages);
        }
    }

    /// <summary>Closing writes what is left of the log; a disk that has no room for it changes nothing of the command's result.</summary>
    private static void Close(Logger log, IAnsiConsole messages)
    {
        try
        {
            log.Dispose();
        }
        catch (IOException refused)
        {
            messages.MarkupLineInterpolated($"The log of this run is incomplete: {refused.Message}");
        }
    }

    private void Show(ParseResult parsed, CommandResult result)
    {
        if (parsed.GetValue(AsJson))
        {
            output.WriteLine(JsonSerializer.Serialize(result.Document, Json));
            return;
        }

        result.Render(ConsoleOn(output, output == Console.Out && !Console.IsOutputRedirected));
    }

    /// <summary>
    /// A terminal wraps at its width and shows what it can; output that goes elsewhere is wrapped nowhere, so that programs find whole lines, and holds no
    /// escape codes. <c>NO_COLOR</c> asks for none on a terminal either.
    /// </summary>
    private static IAnsiConsole ConsoleOn(TextWriter writer, bool interactive)
    {
        var plain = !interactive || Environment.GetEnvironmentVariable("NO_COLOR") is { Length: > 0 };
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(writer),
            Ansi = plain ? AnsiSupport.No : AnsiSupport.Detect,
            ColorSystem = plain ? ColorSystemSupport.NoColors : ColorSystemSupport.Detect,
            Interactive = plain ? InteractionSupport.No : InteractionSupport.Detect,
        });
        if (!interactive)
            console.Profile.Width = Unwrapped;
        return console;
    }

    private static string CommandPath(ParseResult parsed)
    {
        var names = new List<string>();
        for (Symbol? symbol = parsed.CommandResult.Command; symbol is Command and not RootCommand; symbol = symbol.Parents.FirstOrDefault())
            names.Insert(0, symbol.Name);
        return string.Join(' ', ["swingstudy", .. names]);
    }
}
