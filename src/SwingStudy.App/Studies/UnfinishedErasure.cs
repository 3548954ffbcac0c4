using SwingStudy.Domain.Problems;
using SwingStudy.Storage.Registry;

namespace SwingStudy.App.Studies;

/// <summary>An erasure that was cut short: nothing else may be written before it is finished.</summary>
internal static class UnfinishedErasure
{
    /// <summary>Code of the problem.</summary>
    public const string Code = "erasure-unfinished";

    /// <summary>The problem; null when there is no such erasure.</summary>
    public static Problem? Found(StudyRegistry registry) =>
        registry.Participants().FirstOrDefault(person => person.Status == Participant.BeingErased) is { } person
            ? new Problem(Code, new Place("study.db"), "an erasure was cut short", "a finished erasure before anything else is written", $"Finish it: 'swingstudy people erase {person.Code}'.")
            : null;
}
