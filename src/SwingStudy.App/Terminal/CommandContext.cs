using Serilog;
using Spectre.Console;
using SwingStudy.Domain.Studies;

namespace SwingStudy.App.Terminal;

/// <summary>What a command may use of the world around it.</summary>
/// <param name="Folder">The study folder named by <c>--study</c>, or the current one.</param>
/// <param name="Messages">Standard error: progress and messages.</param>
/// <param name="Time">The clock.</param>
/// <param name="Log">Log of this run.</param>
/// <param name="IsInteractive">Whether standard error is a terminal, where progress may be redrawn.</param>
internal sealed record CommandContext(StudyFolder Folder, IAnsiConsole Messages, TimeProvider Time, ILogger Log, bool IsInteractive)
{
    /// <summary>Whether a person sits at the terminal who can be asked.</summary>
    public bool CanAsk => IsInteractive && !Console.IsInputRedirected;

    /// <summary>Who acts, for the ledger: the login name of the person, or SWINGSTUDY_ACTOR where that is set.</summary>
    public string Actor { get; } = Environment.GetEnvironmentVariable("SWINGSTUDY_ACTOR") is { Length: > 0 } actor ? actor : Environment.UserName;
}
