using NodaTime;
using SwingStudy.App.Demo.Model;

namespace SwingStudy.App.Demo;

/// <summary>One recording of the force plates.</summary>
/// <param name="Movement">What the player does; null on empty plates.</param>
/// <param name="Player">The player as the device knows it.</param>
/// <param name="Began">Time of the first sample on the device's clock.</param>
/// <param name="Hit">Contact in milliseconds from the first sample, as the device's trigger says; null where there is none.</param>
/// <param name="From">Time of the first sample in the movement, seconds from impact.</param>
/// <param name="Seconds">Length.</param>
/// <param name="IsFalse">A trigger without a swing.</param>
internal sealed record PlateRecording(SwingModel? Movement, string Player, Instant Began, double? Hit, double From, double Seconds, bool IsFalse);
