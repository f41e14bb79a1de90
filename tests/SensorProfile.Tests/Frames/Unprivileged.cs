using System.Runtime.InteropServices;
using System.Runtime.Versioning;

namespace SensorProfile.Tests.Frames;

/// <summary>
/// Runs work as a user whom file permissions bind, also where the tests run as the superuser, whom they do not.
/// </summary>
internal static class Unprivileged
{
    private const uint Nobody = 65534;

    /// <summary>
    /// Runs it on a thread of its own: Linux keeps the user of file access, and with it the right to pass by
    /// permissions, for each thread (setfsuid(2), capabilities(7)).
    /// </summary>
    [UnsupportedOSPlatform("windows")]
    public static T Run<T>(Func<T> work)
    {
        if (!Environment.IsPrivilegedProcess)
            return work();
        Assert.True(OperatingSystem.IsLinux(), "As the superuser this test needs Linux; run it as another user.");
        T result = default!;
        Exception? failure = null;
        var thread = new Thread(() =>
        {
            _ = SetFileUser(Nobody);
            try
            {
                // it returns the one before
                result =
                    SetFileUser(Nobody) == Nobody
                        ? work()
                        : throw new InvalidOperationException("The user of file access could not be changed.");
            }
            catch (Exception problem)
            {
                failure = problem;
            }
        });
        thread.Start();
        thread.Join();
        return failure is null
            ? result
            : throw new InvalidOperationException("The work of another user failed.", failure);
    }

    [DllImport("libc", EntryPoint = "setfsuid"), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int SetFileUser(uint user);
}
