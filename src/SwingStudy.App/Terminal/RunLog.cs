using System.Globalization;
using Serilog;
using Serilog.Core;
using Serilog.Events;
using Serilog.Formatting.Compact;
using Serilog.Sinks.SystemConsole.Themes;
using SwingStudy.Domain.Studies;

namespace SwingStudy.App.Terminal;

/// <summary>The log of one run: readable lines on standard error, and one compact JSON file under <c>logs/</c> of the study.</summary>
/// <remarks>Names of people never enter the log: sources, hashes and codes do.</remarks>
internal static class RunLog
{
    /// <summary>Opens the log; a folder that is no study yet gets no file.</summary>
    public static Logger Open(StudyFolder folder, string command, bool verbose, TimeProvider time)
    {
        var configuration = new LoggerConfiguration()
            .MinimumLevel.Debug()
            .WriteTo.Console(
                restrictedToMinimumLevel: verbose ? LogEventLevel.Debug : LogEventLevel.Warning,
                outputTemplate: "{Timestamp:HH:mm:ss} {Level:u3} {Message:lj}{NewLine}",
                formatProvider: CultureInfo.InvariantCulture,
                theme: ConsoleTheme.None,
                standardErrorFromLevel: LogEventLevel.Verbose);
        if (!File.Exists(folder.StudyFile))
            return configuration.CreateLogger();
        var stamp = time.GetUtcNow().ToString("yyyyMMdd'T'HHmmssfff", CultureInfo.InvariantCulture);
        var file = Path.Combine(folder.Logs, $"{stamp}-{command}-{Environment.ProcessId.ToString(CultureInfo.InvariantCulture)}.clef");
        return configuration.WriteTo.File(new CompactJsonFormatter(), file).CreateLogger();
    }

    /// <summary>The newest log file of the study, or null.</summary>
    public static string? FileOf(StudyFolder folder) =>
        Directory.Exists(folder.Logs) ? Directory.GetFiles(folder.Logs, "*.clef").Max(StringComparer.Ordinal) : null;
}
