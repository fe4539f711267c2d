@echo off
rem Starts Spanroom. Unlike the launcher of other systems it leaves the choice of options to Java, apart from the memory.
rem   JAVA_HOME            folder of the Java to use, 17 or later; without it, the java on the PATH
rem   SPANROOM_JAVA_OPTS   additional options of Java, such as -Xmx8g; they override what is chosen here
setlocal EnableExtensions DisableDelayedExpansion
set "SPANROOM_JAR=%~dp0..\lib\spanroom.jar"
set "SPANROOM_JAVA=java"
if defined JAVA_HOME set "SPANROOM_JAVA=%JAVA_HOME%\bin\java.exe"
if not exist "%SPANROOM_JAR%" goto nojar
set "SPANROOM_VERSION="
for /f "tokens=3" %%v in ('""%SPANROOM_JAVA%" -version 2^>^&1 ^| findstr /c:" version ""') do set "SPANROOM_VERSION=%%~v"
if not defined SPANROOM_VERSION goto nojava
for /f "tokens=1 delims=.-+" %%m in ("%SPANROOM_VERSION%") do set "SPANROOM_MAJOR=%%m"
if %SPANROOM_MAJOR% LSS 17 goto oldjava
"%SPANROOM_JAVA%" -XX:MaxRAMPercentage=60.0 %SPANROOM_JAVA_OPTS% -jar "%SPANROOM_JAR%" %*
exit /b %ERRORLEVEL%

:nojar
echo spanroom: %SPANROOM_JAR% is missing; unpack the distribution again 1>&2
exit /b 1
:nojava
echo spanroom: Java is missing; install Java 17 or later, or set JAVA_HOME to its folder 1>&2
exit /b 1
:oldjava
echo spanroom: Java %SPANROOM_VERSION% is too old; install Java 17 or later, or set JAVA_HOME to its folder 1>&2
exit /b 1
